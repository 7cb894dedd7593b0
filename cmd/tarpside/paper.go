package main

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"time"

	"fyne.io/fyne/v2"

	"tarpside/board/paper"
)

// print writes a paper into the folder papers beside the department file and
// opens it in the system's viewer.
func (w *window) print(p paper.Paper, opened func(error)) (path string, err error) {
	dir := filepath.Join(filepath.Dir(w.file), "papers")
	if w.temp != "" { // a practice copy leaves nothing behind
		dir = filepath.Join(w.temp, "papers")
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return "", err
	}
	path = filepath.Join(dir, p.File)
	f, err := os.Create(path)
	if err != nil {
		return path, err
	}
	if err := errors.Join(p.Write(f), f.Close()); err != nil {
		return path, err
	}
	go func() {
		err := view(runtime.GOOS, path)
		fyne.Do(func() { opened(err) })
	}()
	return path, nil
}

// patience is how long a viewer may take to say that it cannot.
const patience = 3 * time.Second

// view opens a file in the viewer that the system has for it. Openers that
// are still there after a while have found one.
func view(system, path string) error {
	name, args := opener(system)
	cmd := exec.Command(name, append(args, path)...)
	if err := cmd.Start(); err != nil {
		return err
	}
	done := make(chan error, 1)
	go func() { done <- cmd.Wait() }()
	select {
	case err := <-done:
		return err
	case <-time.After(patience):
		return nil
	}
}

// opener is the command that opens files on a system.
func opener(system string) (name string, args []string) {
	switch system {
	case "windows":
		return "rundll32", []string{"url.dll,FileProtocolHandler"}
	case "darwin":
		return "open", nil
	}
	return "xdg-open", nil
}

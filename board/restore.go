package board

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"github.com/gofrs/flock"

	"tarpside/board/ledger"
)

// Restore puts a copy of the backup from in the place to, where the
// department file is. A file that is there already is refused with
// [ErrExists]; with replace it is moved aside to the name that is returned,
// with the time in it, and kept. The backup is checked before anything moves.
// The copy gets a device of its own: the file that it was made from may go on
// being used, and both would count their entries alike.
// Errors are *ledger.Trouble.
func Restore(from, to string, replace bool, opts Options) (aside string, err error) {
	name := filepath.Base(to)
	if _, err := os.Stat(from); errors.Is(err, fs.ErrNotExist) {
		return "", &ledger.Trouble{What: fmt.Sprintf("There is no backup %s.", from), Safe: "Nothing was restored, and nothing was changed.",
			Do: "Check its name, and that the folder or the stick that it lies on is there."}
	}
	source, err := ledger.Open(from, ledger.Options{ReadOnly: true})
	if err != nil {
		return "", err
	}
	defer source.Close()
	if err := sound(source, from); err != nil {
		return "", err
	}
	if err := mayPlace(from, to, replace); err != nil {
		return "", err
	}
	dir, err := os.MkdirTemp(filepath.Dir(to), ".restore-*")
	if err != nil {
		return "", &ledger.Trouble{What: fmt.Sprintf("%s could not be restored.", name), Safe: untouched,
			Do: "Check that its folder is there and that you may write in it.", Err: err}
	}
	defer os.RemoveAll(dir)
	copied := filepath.Join(dir, name)
	if err := copyOf(source, copied, opts); err != nil {
		return "", err
	}
	lock := flock.New(to + ".lock")
	if got, err := lock.TryLock(); err != nil || !got {
		return "", inUse(name, err)
	}
	defer lock.Unlock()
	if err := mayReplace(to, replace); err != nil { // once more: nobody else can make one now
		return "", err
	}
	aside, err = swap(copied, to, free(to+".before-"+opts.Now().Format("20060102-150405")))
	if err != nil {
		return "", &ledger.Trouble{What: fmt.Sprintf("The restored copy could not be put in the place of %s.", name),
			Safe: untouched, Do: "Close other programs that use its folder, then do it again.", Err: err}
	}
	return aside, nil
}

const untouched = "The backup and the department file are as they were."

func inUse(name string, err error) error {
	return &ledger.Trouble{What: fmt.Sprintf("Another program has %s open.", name), Safe: untouched,
		Do: "Close it there, then restore again.", Err: err}
}

// sound checks all of a file.
func sound(l *ledger.Ledger, path string) error {
	report, err := l.Check()
	if err != nil || len(report.Problems) == 0 {
		return err
	}
	said := report.Problems[0]
	if n := len(report.Problems); n > 1 {
		said = fmt.Sprintf("%s; and %d things more", said, n-1)
	}
	return &ledger.Trouble{What: fmt.Sprintf("%s is not sound: %s.", filepath.Base(path), said), Safe: untouched,
		Do: "Choose another backup, and keep this one: what can be read of it is still in it."}
}

// mayPlace tells whether the backup may take the place of the department
// file. All that SQLite keeps beside an old file is brought into it.
func mayPlace(from, to string, replace bool) error {
	name := filepath.Base(to)
	old, err := os.Stat(to)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err == nil && old.IsDir() {
		err = errors.New("it is a folder")
	}
	if err != nil {
		return &ledger.Trouble{What: fmt.Sprintf("%s cannot be replaced.", name), Safe: untouched,
			Do: "Choose another name.", Err: err}
	}
	if backup, err := os.Stat(from); err == nil && os.SameFile(backup, old) {
		return &ledger.Trouble{What: fmt.Sprintf("%s is both the backup and the file to restore.", name), Safe: untouched,
			Do: "Name the backup that you want in its place."}
	}
	if err := mayReplace(to, replace); err != nil {
		return err
	}
	l, err := ledger.Open(to, ledger.Options{})
	if err != nil {
		return nil // damaged: that is what a restore is for
	}
	readOnly, why := l.ReadOnly()
	if err := l.Close(); err != nil {
		return inUse(name, err)
	}
	if readOnly {
		return &ledger.Trouble{What: fmt.Sprintf("%s cannot be replaced now.", name), Safe: untouched, Do: why}
	}
	return nil
}

// mayReplace refuses a file that is there, unless it is to be replaced.
func mayReplace(to string, replace bool) error {
	if _, err := os.Lstat(to); replace || errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return &ledger.Trouble{What: fmt.Sprintf("Nothing was restored to %s.", filepath.Base(to)), Safe: untouched,
		Do:  "If the backup shall take its place, say so (-replace): the file that is there is then moved aside and kept.",
		Err: ErrExists}
}

// copyOf makes a checked copy of the log with a device of its own.
func copyOf(source *ledger.Ledger, path string, opts Options) error {
	if err := source.Backup(path); err != nil {
		return err
	}
	l, err := ledger.Open(path, ledger.Options{})
	if err != nil {
		return err
	}
	err = sound(l, path)
	if err == nil {
		err = l.SetSetting(settingDevice, (&Board{opts: opts}).newDevice())
	}
	return errors.Join(err, l.Close())
}

// free is the name, or the name with a number, under which there is nothing.
func free(name string) string {
	for n, try := 2, name; ; n++ {
		if _, err := os.Lstat(try); errors.Is(err, fs.ErrNotExist) {
			return try
		}
		try = fmt.Sprintf("%s-%d", name, n)
	}
}

// swap moves the old file, and what SQLite keeps beside it, to the name aside
// and the new one to its place: all or, with an error, nothing. What is beside
// goes first: beside the new file it would spoil it. It returns aside, or ""
// if there was no old file.
func swap(copied, to, aside string) (kept string, err error) {
	var moved []string
	defer func() {
		for _, end := range moved {
			if err != nil {
				err = errors.Join(err, os.Rename(aside+end, to+end))
			}
		}
	}()
	for _, end := range []string{"-wal", "-shm", "-journal", ""} {
		err := os.Rename(to+end, aside+end)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return "", err
		}
		moved, kept = append(moved, end), aside
	}
	if err := os.Rename(copied, to); err != nil {
		return "", err
	}
	return kept, syncFolder(filepath.Dir(to))
}

// syncFolder makes new names safe on disk. Windows has no such call for a
// folder and keeps names in its own journal.
func syncFolder(dir string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	f, err := os.Open(dir)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

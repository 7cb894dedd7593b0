package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// environ returns this process's environment with each NAME=VALUE of set
// added or replaced; a bare NAME is taken out.
func environ(base []string, set ...string) []string {
	changed := map[string]bool{}
	for _, s := range set {
		name, _, _ := strings.Cut(s, "=")
		changed[name] = true
	}
	var env []string
	for _, e := range base {
		if name, _, _ := strings.Cut(e, "="); !changed[name] {
			env = append(env, e)
		}
	}
	for _, s := range set {
		if strings.Contains(s, "=") {
			env = append(env, s)
		}
	}
	return env
}

// tool prepares a command that shares this terminal. When ctx ends it is asked
// to stop, and is killed if it has not stopped ten seconds later.
func tool(ctx context.Context, set []string, name string, args ...string) *exec.Cmd {
	cmd := exec.CommandContext(ctx, name, args...)
	cmd.Env = environ(os.Environ(), set...)
	cmd.Stdin, cmd.Stdout, cmd.Stderr = os.Stdin, os.Stdout, os.Stderr
	cmd.Cancel = func() error { return cmd.Process.Signal(os.Interrupt) }
	cmd.WaitDelay = 10 * time.Second
	return cmd
}

// show prints a command line, then runs it with its output on this terminal.
func show(ctx context.Context, set []string, name string, args ...string) error {
	fmt.Println("$", line(set, name, args))
	return tool(ctx, set, name, args...).Run()
}

// line is a command as it would be typed; names that are only taken out of the
// environment are not shown.
func line(set []string, name string, args []string) string {
	var words []string
	for _, s := range set {
		if strings.Contains(s, "=") {
			words = append(words, s)
		}
	}
	words = append(words, name)
	for _, a := range args {
		if a == "" || strings.ContainsAny(a, " $^*'\"") {
			a = "'" + a + "'"
		}
		words = append(words, a)
	}
	return strings.Join(words, " ")
}

// has reports whether a program is on the PATH.
func has(program string) bool {
	_, err := exec.LookPath(program)
	return err == nil
}

// toModuleTop makes the folder of the module's go.mod the working folder.
func toModuleTop(ctx context.Context) error {
	out, err := exec.CommandContext(ctx, "go", "env", "GOMOD").Output()
	if err != nil {
		return fmt.Errorf("cannot ask Go where this module is (is go on the PATH?): %w", err)
	}
	mod := strings.TrimSpace(string(out))
	if filepath.Base(mod) != "go.mod" {
		return fmt.Errorf("not inside the Tarpside module: change to its folder and run this again")
	}
	return os.Chdir(filepath.Dir(mod))
}

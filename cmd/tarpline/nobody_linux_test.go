package main

import (
	"os"
	"path/filepath"
	"runtime"
	"syscall"
	"testing"
)

// asNobody runs f, on this thread alone, as a user whom file permissions
// bind: they do not bind root, as whom tests may run. The folder is opened to
// that user.
func asNobody(t *testing.T, dir string, f func()) {
	t.Helper()
	if os.Getuid() != 0 {
		f()
		return
	}
	if err := os.Chmod(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	if err := syscall.Setfsuid(65534); err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := syscall.Setfsuid(0); err != nil {
			panic(err) // the thread must not be used on
		}
	}()
	if err := os.WriteFile(filepath.Join(dir, "x"), nil, 0o644); err == nil {
		t.Fatal("permissions do not bind this user either")
	}
	f()
}

package ledger

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

// A small disk of its own, where the machine lets a test make one. Where it
// does not, the page limit above is the test.
func TestARealFullDiskTakesATapWholeOrNotAtAll(t *testing.T) {
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size=1m"); err != nil {
		t.Logf("no disk could be made (%v); a page limit stands for it", err)
		TestAFullDiskTakesATapWholeOrNotAtAll(t)
		return
	}
	defer syscall.Unmount(dir, syscall.MNT_DETACH)
	ballast := filepath.Join(dir, "ballast")
	if err := os.WriteFile(ballast, make([]byte, 400<<10), 0o644); err != nil {
		t.Fatal(err)
	}
	l := mustOpen(t, filepath.Join(dir, "dept"))
	defer l.Close() // before the disk goes
	mustAppend(t, l, entriesOf("A", "S1", 1, 10)...)
	fillUp(t, l, 10, func() {
		if err := os.Remove(ballast); err != nil {
			t.Fatal(err)
		}
	})
	if err := os.WriteFile(ballast, make([]byte, 1<<20), 0o644); err == nil {
		t.Fatal("the disk is larger than was asked for")
	}
	wantTrouble(t, l.Backup(filepath.Join(dir, "copy"))) // no room for a second
	if _, err := os.Stat(filepath.Join(dir, "copy")); err == nil {
		t.Error("half a copy was left")
	}
}

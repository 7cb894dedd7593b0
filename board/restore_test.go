package board_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tarpside/board"
	"tarpside/board/ledger"
	"tarpside/model"
)

// backed is a closed department file with one piece on the tarp, and a backup
// of it from before that.
func backed(t *testing.T) (b *tablet, backup string) {
	t.Helper()
	b = newTablet(t, "").withDemo(t)
	scene := b.begin(t, "Bridge")
	backup = filepath.Join(t.TempDir(), "copy.db")
	if err := b.Backup(backup); err != nil {
		t.Fatal(err)
	}
	b.logTo(t, scene, act(model.PullOff, 1, "R41-001", "home", "tarp"))
	b.shut(t)
	return b, backup
}

// tarp is how many pieces lie on the tarp by the file, and its device.
func tarp(t *testing.T, path string, opts board.Options) (n int, device string) {
	t.Helper()
	b, err := board.Open(path, opts)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if why := b.Picture().ReadOnly; why != "" {
		t.Fatal(why)
	}
	findings, err := b.Verify()
	for _, f := range findings {
		if !f.OK {
			t.Error(f.Words)
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range b.Picture().State.Where() {
		if r.Place.Kind == model.Tarp {
			n += r.Quantity
		}
	}
	return n, b.Picture().Device
}

// troubled checks that the error says what is safe and what to do.
func troubled(t *testing.T, err error, words string) {
	t.Helper()
	var trouble *ledger.Trouble
	if !errors.As(err, &trouble) || trouble.Safe == "" || trouble.Do == "" || !strings.Contains(err.Error(), words) {
		t.Errorf("%v; want %q in it", err, words)
	}
}

func TestABackupIsRestoredUnderADeviceOfItsOwn(t *testing.T) {
	b, backup := backed(t)
	before, device := tarp(t, b.path, b.opts)
	to := filepath.Join(t.TempDir(), "new.db")
	aside, err := board.Restore(backup, to, false, b.opts)
	if err != nil || aside != "" {
		t.Fatal(aside, err)
	}
	after, other := tarp(t, to, b.opts)
	if before != 1 || after != 0 {
		t.Errorf("%d on the tarp before the restore, %d after", before, after)
	}
	if other == device || other == "" {
		t.Errorf("the copy is device %q, the original %q", other, device)
	}
	left, err := os.ReadDir(filepath.Dir(to))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range left {
		if f.Name() != "new.db" && f.Name() != "new.db.lock" {
			t.Errorf("%s was left behind", f.Name())
		}
	}
}

func TestARestoreNeverOverwritesInSilence(t *testing.T) {
	b, backup := backed(t)
	was, err := os.ReadFile(b.path)
	if err != nil {
		t.Fatal(err)
	}
	_, err = board.Restore(backup, b.path, false, b.opts)
	troubled(t, err, "-replace")
	if !errors.Is(err, board.ErrExists) {
		t.Errorf("%v is not ErrExists", err)
	}
	if is, err := os.ReadFile(b.path); err != nil || !bytes.Equal(was, is) {
		t.Errorf("the file was changed by a refusal, %v", err)
	}
	kept := map[string]bool{}
	for range 3 { // within one second, so the names must not be the same
		aside, err := board.Restore(backup, b.path, true, b.opts)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.HasPrefix(filepath.Base(aside), "dept.db.before-20261114-1850") || kept[aside] {
			t.Errorf("kept as %s", aside)
		}
		n, _ := tarp(t, aside, b.opts)
		if want := map[bool]int{true: 1, false: 0}[len(kept) == 0]; n != want {
			t.Errorf("%s has %d on the tarp, want %d", aside, n, want)
		}
		kept[aside] = true
	}
	if n, _ := tarp(t, b.path, b.opts); n != 0 {
		t.Errorf("%d on the tarp after the restore", n)
	}
}

func TestADamagedDepartmentFileIsMovedAsideAndReplaced(t *testing.T) {
	b, backup := backed(t)
	half, err := os.ReadFile(b.path)
	if err != nil {
		t.Fatal(err)
	}
	half = half[:len(half)/2]
	for name, data := range map[string][]byte{"": half, "-wal": []byte("of the old file")} {
		if err := os.WriteFile(b.path+name, data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	aside, err := board.Restore(backup, b.path, true, b.opts)
	if err != nil {
		t.Fatal(err)
	}
	if n, _ := tarp(t, b.path, b.opts); n != 0 {
		t.Errorf("%d on the tarp after the restore", n)
	}
	if is, err := os.ReadFile(aside); err != nil || !bytes.Equal(is, half) {
		t.Errorf("the damaged file was not kept as it was: %v", err)
	}
}

func TestABackupThatIsNotSoundOrNotThereIsNotRestored(t *testing.T) {
	b, backup := backed(t)
	data, err := os.ReadFile(backup)
	if err != nil {
		t.Fatal(err)
	}
	half := filepath.Join(t.TempDir(), "half.db")
	if err := os.WriteFile(half, data[:len(data)/2], 0o644); err != nil {
		t.Fatal(err)
	}
	for from, words := range map[string]string{half: "half.db", filepath.Join(t.TempDir(), "none.db"): "none.db", b.path: "both the backup and"} {
		aside, err := board.Restore(from, b.path, true, b.opts)
		if aside != "" {
			t.Errorf("%s: something was moved to %s", from, aside)
		}
		troubled(t, err, words)
	}
	if n, _ := tarp(t, b.path, b.opts); n != 1 {
		t.Errorf("%d on the tarp after failed restores, want 1", n)
	}
	if _, err := board.Restore(backup, filepath.Join(t.TempDir(), "no", "such", "folder.db"), false, b.opts); err == nil {
		t.Error("a restore into a folder that is not there")
	}
	if _, err := board.Restore(backup, t.TempDir(), true, b.opts); err == nil {
		t.Error("a restore over a folder")
	}
}

func TestAFileThatIsInUseIsNotReplaced(t *testing.T) {
	b, backup := backed(t)
	user, err := board.Open(b.path, b.opts)
	if err != nil {
		t.Fatal(err)
	}
	defer user.Close()
	_, err = board.Restore(backup, b.path, true, b.opts)
	troubled(t, err, "Another program has dept.db open")
	if _, err := user.Log(board.Tap{Acts: []model.Act{act(model.Return, 1, "R41-001", "tarp", "home")}}); err != nil {
		t.Errorf("the program that has it open cannot go on: %v", err)
	}
}

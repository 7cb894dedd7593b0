package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestAFileForReadingOnlyIsReadAndNotWritten(t *testing.T) {
	d, _ := playedDesk(t, demoScene, "20")
	want := d.must("-csv", "where")
	for _, end := range []string{"-wal", "-shm"} { // as if it came on a disc
		os.Remove(d.db + end)
	}
	was, err := os.ReadFile(d.db)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(d.db, 0o444); err != nil {
		t.Fatal(err)
	}
	tables, err := filepath.Abs(demoTables)
	if err != nil {
		t.Fatal(err)
	}
	asNobody(t, filepath.Dir(filepath.Dir(d.db)), func() {
		if got := d.must("-csv", "where"); got != want {
			t.Error("the list is another")
		}
		d.must("verify")
		d.stdin = sceneText("open,M01,,,,,,,")
		for _, args := range [][]string{{"replay", "-"}, {"stores", "load", tables}} {
			if errs := d.fails(failed, args...); !strings.Contains(errs, "may not be written to") || !strings.Contains(errs, "nothing was changed") {
				t.Errorf("%q: %s", args, errs)
			}
		}
	})
	if is, err := os.ReadFile(d.db); err != nil || string(is) != string(was) {
		t.Errorf("the file was changed, %v", err)
	}
}

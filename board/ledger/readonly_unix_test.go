//go:build unix

package ledger

import (
	"os"
	"path/filepath"
	"reflect"
	"testing"
)

func TestAFileOrFolderForReadingOnlyIsReadAndSaysSo(t *testing.T) {
	for name, forbid := range map[string]func(path string) (string, os.FileMode){
		"file":   func(path string) (string, os.FileMode) { return path, 0o444 },
		"folder": func(path string) (string, os.FileMode) { return filepath.Dir(path), 0o555 },
	} {
		for _, copied := range []bool{false, true} { // with the lock file beside it and without
			path := filled(t, 30)
			if copied {
				if err := os.Remove(path + ".lock"); err != nil {
					t.Fatal(err)
				}
			}
			for what, mode := range map[string]os.FileMode{path: 0o666, filepath.Dir(path): 0o777} { // all else is allowed
				if err := os.Chmod(what, mode); err != nil {
					t.Fatal(err)
				}
			}
			what, mode := forbid(path)
			if err := os.Chmod(what, mode); err != nil {
				t.Fatal(err)
			}
			before := sum(t, path)
			asNobody(t, filepath.Dir(filepath.Dir(path)), func() {
				for _, opts := range []Options{{}, {ReadOnly: true}} {
					l, err := Open(path, opts)
					if err != nil {
						t.Errorf("%s: %v", name, err)
						return
					}
					ro, why := l.ReadOnly()
					if !ro || why == "" {
						t.Errorf("%s: read-only %v: %q", name, ro, why)
					}
					if got := all(t, l); !reflect.DeepEqual(got, entriesOf("A", "S1", 1, 30)) {
						t.Errorf("%s: %d entries are read", name, len(got))
					}
					_, err = l.Append(entry("A", "S1", 31))
					wantTrouble(t, err)
					mustCheck(t, l, 30)
					mustClose(t, l)
				}
				if name == "folder" {
					_, err := Open(filepath.Join(filepath.Dir(path), "new"), Options{})
					wantTrouble(t, err)
				}
			})
			if after := sum(t, path); after != before {
				t.Errorf("%s: was %s and is %s", name, before, after)
			}
			if err := os.Chmod(what, 0o755); err != nil {
				t.Fatal(err)
			}
		}
	}
}

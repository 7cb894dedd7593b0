package main

import (
	"os"
	"path/filepath"
	"testing"
)

func TestAViewerThatIsNotThereOrDoesNotStartIsTold(t *testing.T) {
	for _, c := range []struct {
		name, script string
		works        bool
	}{
		{"none there", "", false},
		{"nothing shows PDF", "#!/bin/sh\nexit 3\n", false},
		{"it opens and returns", "#!/bin/sh\nexit 0\n", true},
		{"it stays open", "#!/bin/sh\nexec /bin/sleep 6\n", true},
	} {
		dir := t.TempDir()
		if c.script != "" {
			if err := os.WriteFile(filepath.Join(dir, "xdg-open"), []byte(c.script), 0o755); err != nil {
				t.Fatal(err)
			}
		}
		t.Setenv("PATH", dir)
		if err := view("linux", filepath.Join(dir, "tarp.pdf")); (err == nil) != c.works {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	for _, system := range []string{"windows", "darwin", "linux"} {
		if name, _ := opener(system); name == "" {
			t.Errorf("%s has no opener", system)
		}
	}
}

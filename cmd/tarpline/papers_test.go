package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// pdfs are the papers in a folder.
func pdfs(t *testing.T, dir string) map[string][]byte {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.pdf"))
	if err != nil {
		t.Fatal(err)
	}
	out := map[string][]byte{}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.HasPrefix(data, []byte("%PDF-1.")) || !bytes.HasSuffix(bytes.TrimSpace(data), []byte("%%EOF")) {
			t.Errorf("%s is no whole PDF", f)
		}
		out[filepath.Base(f)] = data
	}
	return out
}

func TestPapersAreWrittenAndNamed(t *testing.T) {
	d := loadedDesk(t)
	dir := filepath.Join(t.TempDir(), "new", "folder")
	out := d.must("papers", "-out", dir, "-rig", "e42")
	fits(t, "papers", out)
	made := pdfs(t, dir)
	if len(made) != 12 || !strings.HasPrefix(out, "12 papers are in ") || !strings.Contains(out, "letter paper") {
		t.Errorf("%d papers: %s", len(made), out)
	}
	for _, name := range []string{"slots_E42.pdf", "putback_E42.pdf", "open_E42.pdf", "release_E42.pdf", "labels-qr_E42.pdf", "labels-bars_E42.pdf",
		"tarp.pdf", "closeout.pdf", "restock.pdf", "tags.pdf", "lost.pdf", "activity.pdf"} {
		if made[name] == nil || !strings.Contains(out, name) {
			t.Errorf("%s was not written, or not named", name)
		}
	}
	again := filepath.Join(t.TempDir(), "again")
	d.must("papers", "-out", again, "-rig", "E42")
	for name, data := range pdfs(t, again) {
		if !bytes.Equal(data, made[name]) {
			t.Errorf("%s is not the same the second time", name)
		}
	}
	d.must("papers", "-out", dir, "-paper", "A4")
	all := pdfs(t, dir)
	if len(all) != 30 || bytes.Equal(all["tarp.pdf"], made["tarp.pdf"]) || !bytes.Contains(all["tarp.pdf"], []byte("595.28 841.89")) {
		t.Errorf("%d papers for all rigs, or they are not A4", len(all))
	}
}

func TestPapersThatCannotBeMadeSayWhy(t *testing.T) {
	d := loadedDesk(t)
	file := filepath.Join(t.TempDir(), "a file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		code int
		args []string
		says string
	}{
		{misused, []string{"papers"}, "which folder?"},
		{misused, []string{"papers", "-out", t.TempDir(), "-paper", "legal"}, "it is: letter or a4"},
		{failed, []string{"papers", "-out", t.TempDir(), "-rig", "R99"}, `there is no rig "R99"`},
		{failed, []string{"papers", "-out", file}, "The log is as it was"},
		{failed, []string{"demo", "-out", filepath.Join(file, "x")}, "could not be written"},
		{misused, []string{"demo", "-paper", "legal"}, "it is: letter or a4"},
	} {
		if errs := d.fails(c.code, c.args...); !strings.Contains(errs, c.says) {
			t.Errorf("%q: %s", c.args, errs)
		}
	}
}

func TestTheDemoPrintsItsPapers(t *testing.T) {
	dir := t.TempDir()
	out := newDesk(t).must("demo", "-out", dir)
	for _, folder := range []string{"papers_t60", "papers_t125", "papers"} {
		if n := len(pdfs(t, filepath.Join(dir, folder))); n != 30 || !strings.Contains(out, "30 in "+folder) {
			t.Errorf("%d papers in %s", n, folder)
		}
	}
}

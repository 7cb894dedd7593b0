package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// root is the project's folder, found before any test changes where it stands.
var root = func() string {
	dir, err := filepath.Abs("../..")
	if err != nil {
		panic(err)
	}
	return dir
}()

// The map in DEVELOPERS.md names every room, and no room that is not there.
func TestTheMapInDevelopersIsTrue(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, rest, ok := strings.Cut(string(text), "## The map")
	if !ok {
		t.Fatal("DEVELOPERS.md has no part called The map")
	}
	table, _, _ := strings.Cut(rest, "\n## ")
	var named []string
	for _, m := range regexp.MustCompile("(?m)^\\| `([^`]+)`").FindAllStringSubmatch(table, -1) {
		named = append(named, m[1])
	}
	rooms := []string{"testdata"}
	err = filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return err
		}
		if name := d.Name(); name != "." && name != ".." && (strings.HasPrefix(name, ".") || name == "testdata") {
			return fs.SkipDir
		}
		if files, _ := filepath.Glob(filepath.Join(path, "*.go")); len(files) > 0 {
			room, _ := filepath.Rel(root, path)
			rooms = append(rooms, filepath.ToSlash(room))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rooms {
		if !slices.Contains(named, r) {
			t.Errorf("the map does not name %s", r)
		}
	}
	for _, n := range named {
		if !slices.Contains(rooms, n) {
			t.Errorf("the map names %s, which is not there", n)
		}
	}
}

// Nothing lies at the top but what was agreed.
func TestNothingElseLiesAtTheTop(t *testing.T) {
	agreed := []string{"cmd", "ui", "board", "model", "assets", "testdata", "go.mod", "go.sum", "FyneApp.toml", "README.md", "DEVELOPERS.md"}
	entries, err := os.ReadDir(root)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		name := e.Name()
		built := e.Type().IsRegular() && slices.Contains([]string{"tarpside", "tarpline", "gallery", "dev"}, name)
		if !strings.HasPrefix(name, ".") && !slices.Contains(agreed, name) && !built && name != "screens-out" {
			t.Errorf("%s lies at the top", name)
		}
	}
}

var pathInText = regexp.MustCompile("`((?:cmd|ui|board|model|assets|testdata)/[a-zA-Z0-9_./-]+)`")

// Every file that the two texts name is there.
func TestTheFilesNamedInTheTextsAreThere(t *testing.T) {
	for _, text := range []string{"DEVELOPERS.md", "README.md"} {
		data, err := os.ReadFile(filepath.Join(root, text))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range pathInText.FindAllStringSubmatch(string(data), -1) {
			if strings.Contains(m[1], "NAME") {
				continue
			}
			if _, err := os.Stat(filepath.Join(root, strings.TrimSuffix(m[1], "/"))); err != nil {
				t.Errorf("%s names %s, which is not there", text, m[1])
			}
		}
	}
}

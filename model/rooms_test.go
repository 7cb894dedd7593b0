package model_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// source is one parsed file of the project that is not a test.
type source struct {
	dir     string // from the top, with slashes
	file    *ast.File
	imports []string
}

func sources(t *testing.T) []source {
	var out []source
	err := filepath.WalkDir("..", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && d.Name() != "..") {
			if err == nil {
				err = filepath.SkipDir
			}
			return err
		}
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		rel, err := filepath.Rel("..", name)
		if err != nil {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			return err
		}
		s := source{dir: path.Dir(filepath.ToSlash(rel)), file: f}
		for _, i := range f.Imports {
			p, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				return err
			}
			s.imports = append(s.imports, p)
		}
		out = append(out, s)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func in(dir, room string) bool { return dir == room || strings.HasPrefix(dir, room+"/") }

// level is how high a room stands: it imports none that stands higher.
func level(dir string) int {
	for i, room := range []string{"model", "board", "ui", "cmd"} {
		if in(dir, room) {
			return i
		}
	}
	return 0 // assets
}

func TestImportsGoOneWay(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range sources(t) {
		seen[strings.Split(s.dir, "/")[0]] = true
		for _, p := range s.imports {
			own, ours := strings.CutPrefix(p, "tarpside/")
			switch {
			case ours && level(own) > level(s.dir):
				t.Errorf("%s imports %s", s.dir, own)
			case in(s.dir, "model") && s.dir != "model/modeltest" && !pure(p):
				t.Errorf("%s imports %s: model is pure", s.dir, p)
			case in(s.dir, "board") && strings.HasPrefix(p, "fyne.io/"):
				t.Errorf("%s imports %s: board never draws", s.dir, p)
			case in(s.dir, "ui") && (p == "database/sql" || strings.HasPrefix(p, "modernc.org/")):
				t.Errorf("%s imports %s: ui never asks the file", s.dir, p)
			case p == "fyne.io/fyne/v2/app" && s.dir != "cmd/tarpside":
				t.Errorf("%s imports %s: it needs a C compiler", s.dir, p)
			case ours && own == "model/modeltest":
				t.Errorf("%s imports %s: that is for tests", s.dir, own)
			}
		}
	}
	for _, room := range []string{"model", "board", "ui", "cmd", "assets"} {
		if !seen[room] {
			t.Errorf("no file of %s was read", room)
		}
	}
}

// pure is what model may import: our model, google/uuid, and of the standard
// library what has no clock, files or randomness.
func pure(p string) bool {
	if p == "github.com/google/uuid" || in(p, "tarpside/model") {
		return true
	}
	first, _, _ := strings.Cut(p, "/")
	if strings.Contains(first, ".") || first == "tarpside" {
		return false
	}
	for _, bad := range []string{"os", "io", "net", "log", "math/rand", "crypto", "sync", "runtime", "syscall", "unsafe", "plugin", "database",
		"context", "testing", "embed", "path/filepath"} {
		if in(p, bad) {
			return false
		}
	}
	return true
}

func TestModelHasNoClockNoRandomnessAndNoGoroutines(t *testing.T) {
	for _, s := range sources(t) {
		if !in(s.dir, "model") || s.dir == "model/modeltest" {
			continue
		}
		ast.Inspect(s.file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.GoStmt, *ast.ChanType, *ast.SelectStmt, *ast.SendStmt:
				t.Errorf("%s: a goroutine or channel", s.dir)
			case *ast.SelectorExpr:
				x, ok := n.X.(*ast.Ident)
				if !ok {
					break
				}
				name := x.Name + "." + n.Sel.Name
				switch {
				case x.Name == "uuid" && strings.HasPrefix(n.Sel.Name, "New"), x.Name == "uuid" && n.Sel.Name == "Must":
					t.Errorf("%s: %s draws an id", s.dir, name)
				case name == "time.Now" || name == "time.Since" || name == "time.Until" || name == "time.After" || name == "time.Sleep" ||
					name == "time.NewTimer" || name == "time.NewTicker" || name == "time.Tick" || name == "time.AfterFunc":
					t.Errorf("%s: %s reads a clock", s.dir, name)
				case x.Name == "fmt" && (strings.HasPrefix(n.Sel.Name, "Print") || strings.HasPrefix(n.Sel.Name, "Scan")) && !strings.HasPrefix(n.Sel.Name, "Sscan"):
					t.Errorf("%s: %s writes or reads", s.dir, name)
				}
			}
			return true
		})
	}
}

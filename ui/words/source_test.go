package words

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// file is one source file of the window that is no test.
type file struct {
	name string // from the folder ui
	set  *token.FileSet
	tree *ast.File
	up   map[ast.Node]ast.Node // each node's parent
}

// where is a place in the file, for people.
func (f *file) where(n ast.Node) string {
	return f.name + ":" + strconv.Itoa(f.set.Position(n.Pos()).Line)
}

// sources reads every file of the window. Stories are left out: what their
// parts say is made up to show how it looks.
func sources(t *testing.T) []*file {
	t.Helper()
	out := parsed(t, "..", true)
	if len(out) < 50 {
		t.Fatalf("only %d files of the window were found", len(out))
	}
	return out
}

// parsed reads the source files of a folder, and of those in it if it is said.
func parsed(t *testing.T, dir string, deep bool) []*file {
	t.Helper()
	var out []*file
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err == nil && d.IsDir() && path != dir && !deep {
			return fs.SkipDir
		}
		name := filepath.Base(path)
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") ||
			strings.HasPrefix(name, "stories") || filepath.Dir(path) == filepath.Join("..", "words") {
			return err
		}
		f := &file{name: filepath.ToSlash(strings.TrimPrefix(path, dir+string(filepath.Separator))), set: token.NewFileSet(), up: map[ast.Node]ast.Node{}}
		if f.tree, err = parser.ParseFile(f.set, path, nil, 0); err != nil {
			return err
		}
		var stack []ast.Node
		ast.Inspect(f.tree, func(n ast.Node) bool {
			if n == nil {
				stack = stack[:len(stack)-1]
				return true
			}
			if len(stack) > 0 {
				f.up[n] = stack[len(stack)-1]
			}
			stack = append(stack, n)
			return true
		})
		out = append(out, f)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// text is a literal, or literals that are added together.
func text(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		if e.Kind == token.STRING {
			s, err := strconv.Unquote(e.Value)
			return s, err == nil
		}
	case *ast.ParenExpr:
		return text(e.X)
	case *ast.BinaryExpr:
		a, ok1 := text(e.X)
		b, ok2 := text(e.Y)
		return a + b, ok1 && ok2 && e.Op == token.ADD
	}
	return "", false
}

// use is one call that asks for a text of the table by a literal.
type use struct {
	where    string
	how      string // L, F, K or N
	one, key string
	args     int // what is filled in; -1 where that cannot be told
}

// uses are all such calls of a file.
func uses(f *file) []use {
	var out []use
	ast.Inspect(f.tree, func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok || len(call.Args) == 0 {
			return true
		}
		how := asks(call)
		u := use{where: f.where(call), how: how, args: len(call.Args) - 1}
		switch how {
		case "L", "K":
			u.args = -1
		case "N":
			u.one, _ = text(call.Args[0])
			if u.key, ok = text(call.Args[1]); !ok {
				return true
			}
			if u.args = len(call.Args) - 3; u.args == 0 {
				u.args = -1 // the number itself, or nothing
			}
			out = append(out, u)
			return true
		case "F":
		default:
			return true
		}
		if call.Ellipsis.IsValid() {
			u.args = -1
		}
		if u.key, ok = text(call.Args[0]); ok && u.key != "" {
			out = append(out, u)
		}
		return true
	})
	return out
}

// asks is L, F, K or N where a call is one of those of this package.
func asks(call *ast.CallExpr) string {
	sel, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return ""
	}
	if x, ok := sel.X.(*ast.Ident); ok && x.Name == "words" {
		switch sel.Sel.Name {
		case "L", "F", "K", "N":
			return sel.Sel.Name
		}
	}
	return ""
}

package words

import (
	"go/ast"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"
)

// speakers are the folders whose sentences reach the window.
var speakers = []string{"model", "model/clearup", "model/code", "model/gauge", "model/judge", "model/lift", "model/look", "model/match", "model/restock",
	"model/rundown", "model/sum", "model/tarpsheet", "model/trail", "board", "board/ledger", "board/stick", "board/stores"}

// alone are words of theirs that a sentence is made of and that do not read as
// words by themselves.
var alone = map[string]bool{"home": true, "used": true, "lost": true, "bagged": true, "unexplained": true, "low": true,
	"none": true, "recharge": true, "in": true, "cm": true, "kg": true, "percent": true, "degrees": true, "hours": true, "litres": true, "L/min": true}

var query = regexp.MustCompile(`^(PRAGMA|SELECT|INSERT|UPDATE|DELETE|WHERE|ORDER|CROSS|EXISTS) `)

// unsaid are literals that read as words and are no sentence.
var unsaid = map[string]string{
	"AppData": "a folder", "LocalAppData": "a folder", "Local": "a folder", "Library": "a folder", "Application Support": "a folder",
	"2 Jan 2006": "how a date is written", "Jan 2006": "how a date is written", "%d %ss": "of the terminal",
	"ems along": "a condition of a list", "ems stays": "a condition of a list", "packed snow": "a condition of a list", "people x hours": "a condition of a list",
	"sleeping bag": "looked for in a name", "heat pack": "looked for in a name", "closed-cell pad": "looked for in a name", "litter wheel": "looked for in a name",
	"tag line": "looked for in a name", "tarp and under it": "kept in the log, never shown",
}

// makes are the formats of model and board, and where each of them stands.
func makes(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	all := map[string][]*file{}
	for _, dir := range speakers {
		all[dir] = parsed(t, filepath.Join("..", "..", dir), false)
	}
	known := constants(all)
	there := map[string]bool{}
	for dir, files := range all {
		for _, f := range files {
			pkg := f.tree.Name.Name
			ast.Inspect(f.tree, func(n ast.Node) bool {
				lit, ok := n.(*ast.BasicLit)
				if !ok || lit.Kind != token.STRING {
					return true
				}
				s, _ := text(lit)
				if unsaid[s] != "" || alone[s] {
					there[s] = true
				}
				if !f.told(lit) || !reads(s) && !alone[s] || query.MatchString(s) || unsaid[s] != "" {
					return true
				}
				if key := clause(f.format(lit, pkg, known)); strings.ContainsFunc(verbsOf.ReplaceAllString(key, ""), unicode.IsLetter) {
					out[key] = dir + "/" + f.where(lit)
				}
				return true
			})
		}
	}
	for s := range unsaid {
		if !there[s] {
			t.Errorf("%q, which is no sentence, is nowhere any more", s)
		}
	}
	for s := range alone {
		if !there[s] {
			t.Errorf("%q, which stands alone, is nowhere any more", s)
		}
	}
	return out
}

// told tells whether people may read a literal: it is no matter of goes, or is
// the format of an error.
func (f *file) told(lit *ast.BasicLit) bool {
	_, matters := f.goes(lit)
	call, ok := f.up[lit].(*ast.CallExpr)
	if ok && !matters {
		sel, is := call.Fun.(*ast.SelectorExpr)
		return is && sel.Sel.Name == "Errorf"
	}
	return matters
}

// constants are the texts that have a name, as package.name.
func constants(all map[string][]*file) map[string]ast.Expr {
	out := map[string]ast.Expr{}
	for _, files := range all {
		for _, f := range files {
			for _, d := range f.tree.Decls {
				if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.CONST {
					for _, s := range g.Specs {
						for i, v := range s.(*ast.ValueSpec).Values {
							out[f.tree.Name.Name+"."+s.(*ast.ValueSpec).Names[i].Name] = v
						}
					}
				}
			}
		}
	}
	return out
}

// format is the format of the whole that a literal is part of: what is added
// to it, and is no text that is known, is a hole.
func (f *file) format(lit *ast.BasicLit, pkg string, known map[string]ast.Expr) string {
	var whole ast.Expr = lit
	for {
		up, ok := f.up[whole].(ast.Expr)
		if b, sum := up.(*ast.BinaryExpr); !ok || !(sum && b.Op == token.ADD) && !isParen(up) {
			break
		}
		whole = up
	}
	return written(whole, pkg, known)
}

func isParen(e ast.Expr) bool { _, ok := e.(*ast.ParenExpr); return ok }

// filled are the verbs of the model's formats: "90% of it" is no format.
var filled = regexp.MustCompile(`%(\[\d+\])?(\.\d+)?[sdqvgwf%]`)

// written is an expression as a format.
func written(e ast.Expr, pkg string, known map[string]ast.Expr) string {
	switch e := e.(type) {
	case *ast.BasicLit:
		s, err := strconv.Unquote(e.Value)
		if err == nil && !filled.MatchString(s) {
			s = strings.ReplaceAll(s, "%", "%%")
		}
		return s
	case *ast.ParenExpr:
		return written(e.X, pkg, known)
	case *ast.BinaryExpr:
		return written(e.X, pkg, known) + written(e.Y, pkg, known)
	case *ast.CallExpr:
		if sel, ok := e.Fun.(*ast.SelectorExpr); ok && sel.Sel.Name == "Sprintf" {
			return written(e.Args[0], pkg, known)
		}
	case *ast.Ident:
		if c, ok := known[pkg+"."+e.Name]; ok {
			return written(c, pkg, known)
		}
	case *ast.SelectorExpr:
		if x, ok := e.X.(*ast.Ident); ok {
			if c, ok := known[x.Name+"."+e.Sel.Name]; ok {
				return written(c, x.Name, known)
			}
		}
	}
	return "%s"
}

// joins is what joins a format to a clause that is all filled in.
var joins = regexp.MustCompile(`^%[sw](?:[;.:,?] | \()|(?:[;.:,?] | \()%[swv]\)?$`)

// clause is a format without what joins it to others.
func clause(s string) string {
	inner := strings.TrimRight(strings.TrimLeft(s, ";.:, \n"), ";:, \n")
	if strings.HasPrefix(s, " (") {
		inner = strings.TrimPrefix(inner, "(")
	}
	inner, _ = trimmed(strings.TrimSuffix(inner, " ("))
	if short := joins.ReplaceAllString(inner, ""); short != inner {
		return clause(short)
	}
	return inner
}

package words

import (
	"go/ast"
	"go/token"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
)

// exceptions are literals that read as words and are not translated.
var exceptions = map[string]string{
	"Department": "cut off the names of agencies, which are data", "Office": "as Department", "Service": "as Department", "Company": "as Department",
	"not opened: %s %s %d":   "kept in the log, never shown",
	" of ":                   "of a note in the log",
	" not opened":            "of a note in the log",
	"looked at":              "the state of a row, never shown",
	"not searched":           "the state of a row, never shown",
	"ui: no part shows a %T": "for whoever programs",
	"x":                      "measured, never shown",
	"no door":                "a key of what is kept for one picture",
	"Trail":                  "the name of a place in the log",
	"abc":                    "letters, in every language",
	"the tarp and under it":  "kept in the log, never shown",
}

// unseen are the fields of a view that nobody reads: names of parts, icons,
// states, and what goes into the log.
var unseen = []string{"ID", "id", "Kind", "kind", "Icon", "icon", "State", "state", "Go", "Check", "key", "tab", "Reading", "From", "To", "Listed", "Answer"}

// seen are the fields that people read; any letters in them are words.
var seen = []string{"Title", "Second", "Right", "Note", "Text", "Word", "OffWord", "Says", "Verb", "Unit", "Count", "Question", "Yes", "No", "Sure", "Name",
	"What", "Safe", "Do", "Elsewhere", "And", "title", "sentence", "under", "over", "line", "why", "bigWords", "bigLine", "second"}

var capital = regexp.MustCompile(`^[A-Z][a-z]+`)

// reads tells whether a literal reads as words by itself.
func reads(s string) bool {
	s = verbsOf.ReplaceAllString(s, "")
	return strings.ContainsFunc(s, unicode.IsLetter) && (strings.ContainsAny(s, " \n?") || capital.MatchString(s))
}

// goes is the field or the variable that a literal ends in, or "" where it is
// no matter: it is compared, looked for in data, or is the name of something.
func (f *file) goes(n ast.Node) (field string, matters bool) {
	for up := f.up[n]; ; n, up = up, f.up[up] {
		switch up := up.(type) {
		case *ast.ParenExpr:
			continue
		case *ast.BinaryExpr:
			if up.Op != token.ADD {
				return "", false
			}
			continue
		case *ast.ImportSpec, *ast.Field, *ast.CaseClause, *ast.IndexExpr:
			return "", false
		case *ast.KeyValueExpr:
			id, ok := up.Key.(*ast.Ident)
			switch {
			case up.Key == n:
				return "", false
			case ok:
				return id.Name, true
			}
			return "", true
		case *ast.AssignStmt:
			for i, r := range up.Rhs {
				if r != n || i >= len(up.Lhs) {
					continue
				}
				if l, ok := up.Lhs[i].(*ast.SelectorExpr); ok {
					return l.Sel.Name, true
				}
			}
			return "", true
		case *ast.CallExpr:
			return "", !technical(up)
		}
		return "", true
	}
}

// technical calls take no words for the screen.
func technical(call *ast.CallExpr) bool {
	if asks(call) != "" {
		return true
	}
	switch fun := call.Fun.(type) {
	case *ast.Ident:
		return fun.Name == "panic" || fun.Name == "once" // a key of what is kept for one picture
	case *ast.SelectorExpr:
		x, ok := fun.X.(*ast.Ident)
		name := fun.Sel.Name
		return ok && (x.Name == "strings" && slices.Contains([]string{"HasPrefix", "HasSuffix", "Contains", "TrimPrefix", "TrimSuffix", "CutPrefix", "Cut", "Split"}, name) ||
			x.Name == "fmt" && name == "Errorf" || x.Name == "regexp")
	}
	return false
}

func TestNoWordsOfTheWindowGoPastTheTable(t *testing.T) {
	used := map[string]bool{}
	for _, f := range sources(t) {
		if f.name == "parts/drawn.go" {
			continue // it tells tests what was drawn
		}
		ast.Inspect(f.tree, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			s, _ := text(lit)
			field, matters := f.goes(lit)
			words := reads(s) || slices.Contains(seen, field) && strings.ContainsFunc(verbsOf.ReplaceAllString(s, ""), unicode.IsLetter)
			switch {
			case !matters || !words || slices.Contains(unseen, field) || strings.HasPrefix(s, "<"):
			case exceptions[s] != "":
				used[s] = true
			default:
				t.Errorf("%s: %q is not taken from the table of words", f.where(lit), s)
			}
			return true
		})
	}
	for s, why := range exceptions {
		if !used[s] {
			t.Errorf("the exception %q (%s) is no longer needed", s, why)
		}
	}
}

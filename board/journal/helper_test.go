package journal_test

import (
	"bytes"
	"encoding/csv"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"tarpside/board/journal"
	"tarpside/model"
)

// A cell is an account, its parts as they were before they were written, and
// an item.
type cell struct{ kind, name, ground, item string }

// A book is how many pieces are in each cell; there are no noughts.
type book map[cell]int

// failer is what *testing.T and *rapid.T share.
type failer interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
}

// readers are the two programs that add a journal up. Neither is ours, and
// they were written apart from each other in different languages: so they are
// the outside check of the fold.
var readers = map[string]func(t failer, journal string, depth1 bool) book{"hledger": hledger, "ledger": ledger}

// hledger prints a row of CSV for each account and commodity.
func hledger(t failer, journal string, depth1 bool) book {
	t.Helper()
	args := []string{"-f", "-", "balance", "--flat", "--no-total", "--output-format=csv", "--layout=bare"}
	if depth1 {
		args = append(args, "--depth=1")
	}
	rows, err := csv.NewReader(strings.NewReader(tool(t, journal, "hledger", args...))).ReadAll()
	if err != nil || len(rows) == 0 {
		t.Fatalf("hledger printed no table: %v", err)
	}
	b := book{}
	for _, row := range rows[1:] {
		b.read(t, row[0], row[1], row[2])
	}
	return b
}

// ledger prints each account after an @, and below it a line for each
// commodity, as it shows it to people (scrub). With depth1 it is told to fold what lies below the first part.
func ledger(t failer, journal string, depth1 bool) book {
	t.Helper()
	args := []string{"--args-only", "-f", "-", "balance", "--no-total", "--flat", "--balance-format", "@%(account)\n%(scrub(amount))\n"}
	if depth1 {
		args = append(args[:4], "--no-total", "--depth", "1", "--balance-format", "@%(account)\n%(scrub(display_total))\n")
	}
	b, account := book{}, ""
	for l := range strings.Lines(tool(t, journal, "ledger", args...)) {
		l = strings.TrimSuffix(l, "\n")
		if a, ok := strings.CutPrefix(l, "@"); ok {
			account = a
			continue
		}
		if n, commodity, ok := strings.Cut(strings.TrimLeft(l, " "), " "); ok {
			b.read(t, account, strings.Trim(commodity, `"`), n)
		}
	}
	return b
}

// tool runs a program on a journal and returns what it printed.
func tool(t failer, journal, name string, args ...string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Fatalf("%s is not on this computer, and the fold is held against it. On Debian: apt-get install hledger ledger", name)
	}
	cmd := exec.Command(path, args...)
	cmd.Env = append(os.Environ(), "LC_ALL=C.UTF-8") // hledger reads a file in the locale's encoding
	cmd.Stdin = strings.NewReader(journal)
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s does not take the journal: %v\n%s", name, err, errs.String())
	}
	return out.String()
}

// read takes in what a program printed for an account and an item.
func (b book) read(t failer, account, item, number string) {
	t.Helper()
	n, err := strconv.Atoi(number)
	if err != nil {
		t.Fatalf("%s of %s in %s", number, item, account)
	}
	parts := strings.Split(account, ":")
	for i := range parts {
		parts[i] = unescaped(t, parts[i])
	}
	c := cell{kind: parts[0], item: unescaped(t, item)}
	if c.kind == string(model.Tarp) { // a tarp has no name
		parts = slices.Insert(parts, 1, "")
	}
	if len(parts) > 1 {
		c.name = parts[1]
	}
	if len(parts) > 2 {
		c.ground = parts[2]
	}
	if b[c] += n; n == 0 {
		delete(b, c)
	}
}

func unescaped(t failer, text string) string {
	t.Helper()
	out, err := url.PathUnescape(text)
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return out
}

// fold is the board's own book, place by place.
func fold(s *model.State) book {
	b := book{}
	for i := range s.Dept.Items {
		it := &s.Dept.Items[i]
		b[cell{kind: "owner", name: it.Rig, item: it.ID}] -= it.Quantity
		for _, st := range s.Line(i).Stacks {
			b[cell{string(st.Place.Kind), st.Place.Name, st.Place.Ground, it.ID}] += st.N
		}
	}
	return b
}

// proof is the board's proof as a book, with what the rigs gave.
func proof(s *model.State) book {
	b := book{}
	for _, r := range s.Proof() {
		id := s.Dept.Items[r.Line].ID
		b[cell{kind: "owner", item: id}] = -r.Quantity
		for i, n := range r.By {
			if n != 0 {
				b[cell{kind: string(model.PlaceKinds[i]), item: id}] = n
			}
		}
	}
	return b
}

// wantBook names every cell in which two books differ.
func wantBook(t failer, who string, got, want book) {
	t.Helper()
	for c, n := range want {
		if got[c] != n {
			t.Errorf("%s has %d of %+v, the board %d", who, got[c], c, n)
		}
	}
	for c, n := range got {
		if _, ok := want[c]; !ok {
			t.Errorf("%s has %d of %+v, the board none", who, n, c)
		}
	}
}

func written(t failer, entries []model.Entry, loc *time.Location) string {
	t.Helper()
	var out bytes.Buffer
	if err := journal.Write(&out, entries, loc); err != nil {
		t.Fatalf("%v", err)
	}
	return out.String()
}

// agree holds the board against both programs, account by account.
func agree(t failer, entries []model.Entry, s *model.State) {
	t.Helper()
	text := written(t, entries, time.UTC)
	for name, read := range readers {
		wantBook(t, name, read(t, text, false), fold(s))
	}
}

// source is a path of the project.
func source(parts ...string) string { return filepath.Join(append([]string{"..", ".."}, parts...)...) }

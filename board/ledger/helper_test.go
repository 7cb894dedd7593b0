package ledger

import (
	"crypto/sha256"
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/uuid"

	"tarpside/model"
)

// idOf is in the order of time, as the ids of entries are.
func idOf(device string, n int) uuid.UUID {
	id := uuid.NewSHA1(uuid.NameSpaceOID, fmt.Append(nil, device, n))
	binary.BigEndian.PutUint64(id[:8], uint64(1_800_000_000_000+n*7000)<<16|0x7000)
	return id
}

// entry is the n-th entry of a device: one piece handed to a vehicle.
func entry(device, scene string, n int) model.Entry {
	e := model.Entry{
		ID:     idOf(device, n),
		Stamp:  model.Stamp{Wall: 1_800_000_000_000 + int64(n)*7000, Device: device},
		Device: device,
		Scene:  scene,
		Tap:    "t" + fmt.Sprint(n),
		Seen:   model.Vector{device: n - 1, "other": 40},
		Format: model.Format,
		Act:    model.Act{Verb: model.Hand, By: "M06", Item: "R41-004", Quantity: 2, From: "tarp", To: "at:V1", Holder: "Crew 2"},
		Reply:  model.Reply{Word: model.Warned, Reasons: []string{"late"}, Text: "2 of 3 are on the tarp"},
	}
	e.Moves = []model.Move{{Item: "R41-004", N: 2, From: model.Place{Kind: model.Tarp}, To: model.Place{Kind: model.At, Name: "V1"}}}
	return e
}

func entriesOf(device, scene string, from, to int) []model.Entry {
	var out []model.Entry
	for n := from; n <= to; n++ {
		out = append(out, entry(device, scene, n))
	}
	return out
}

func mustOpen(tb testing.TB, path string) *Ledger {
	tb.Helper()
	l, err := Open(path, Options{})
	if err != nil {
		tb.Fatal(err)
	}
	if ro, why := l.ReadOnly(); ro {
		tb.Fatalf("opened for reading only: %s", why)
	}
	tb.Cleanup(func() { l.Close() })
	return l
}

func mustAppend(tb testing.TB, l *Ledger, entries ...model.Entry) {
	tb.Helper()
	added, err := l.Append(entries...)
	if err != nil {
		tb.Fatal(err)
	}
	if added != len(entries) {
		tb.Fatalf("%d of %d entries were new", added, len(entries))
	}
}

func mustClose(tb testing.TB, l *Ledger) {
	tb.Helper()
	if err := l.Close(); err != nil {
		tb.Fatal(err)
	}
}

func all(tb testing.TB, l *Ledger) []model.Entry {
	tb.Helper()
	var out []model.Entry
	for e, err := range l.Entries(0) {
		if err != nil {
			tb.Fatal(err)
		}
		out = append(out, e)
	}
	return out
}

// filled is the path of a closed file with n entries.
func filled(tb testing.TB, n int) string {
	tb.Helper()
	path := filepath.Join(tb.TempDir(), "dept.tarpside")
	l := mustOpen(tb, path)
	mustAppend(tb, l, entriesOf("A", "S1", 1, n)...)
	mustClose(tb, l)
	return path
}

func mustCheck(tb testing.TB, l *Ledger, entries int) {
	tb.Helper()
	r, err := l.Check()
	if err != nil {
		tb.Fatal(err)
	}
	if len(r.Problems) > 0 || r.Entries != entries {
		tb.Fatalf("%d entries, want %d; problems: %q", r.Entries, entries, r.Problems)
	}
}

// wantTrouble checks that the error speaks to a person.
func wantTrouble(tb testing.TB, err error) *Trouble {
	tb.Helper()
	var t *Trouble
	if !errors.As(err, &t) {
		tb.Fatalf("want a Trouble, got %T: %v", err, err)
	}
	if t.What == "" || t.Safe == "" || t.Do == "" {
		tb.Fatalf("a sentence is missing: %+v", t)
	}
	return t
}

func sum(tb testing.TB, path string) string {
	tb.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		tb.Fatal(err)
	}
	return fmt.Sprintf("%d bytes %x", len(b), sha256.Sum256(b))
}

// names lists what is in the file's folder.
func names(tb testing.TB, path string) string {
	tb.Helper()
	list, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		tb.Fatal(err)
	}
	out := ""
	for _, f := range list {
		out += f.Name() + " "
	}
	return out
}

package tarpsheet_test

import (
	"slices"
	"testing"
	"time"

	"tarpside/model"
	"tarpside/model/code"
	"tarpside/model/modeltest"
	"tarpside/model/tarpsheet"
)

var (
	opened = time.Date(2026, 11, 14, 22, 50, 30, 0, time.UTC)
	late   = opened.Add(5 * time.Hour)
)

func read(t *testing.T, d *model.Department, l tarpsheet.Line) (tarpsheet.Written, []tarpsheet.Fault) {
	t.Helper()
	out, faults := tarpsheet.Read(d, opened, late, []tarpsheet.Line{l})
	if len(out)+min(len(faults), 1) != 1 {
		t.Fatalf("%d lines, %v", len(out), faults)
	}
	if len(out) == 0 {
		return tarpsheet.Written{}, faults
	}
	return out[0], faults
}

func TestATimeIsTheClocksOrTheScenesMinute(t *testing.T) {
	d := modeltest.Yard()
	for cell, want := range map[string]string{"22:50": "14 22:50", "23:59": "14 23:59", "0:10": "15 00:10", "03:49": "15 03:49", "52": "14 23:42", "0": "14 22:50",
		"?": "14 22:50", "Unknown": "14 22:50"} {
		w, faults := read(t, d, tarpsheet.Line{Time: cell, Piece: "?", To: "tarp"})
		if len(faults) > 0 || w.Time.Format("02 15:04") != want {
			t.Errorf("%s: %s %v, want %s", cell, w.Time.Format("02 15:04"), faults, want)
		}
	}
	for _, cell := range []string{"", "24:10", "7", "12:00", "-5", "noon", "1000000"} {
		if _, faults := read(t, d, tarpsheet.Line{Time: cell, Piece: "?", To: "tarp"}); cell != "7" && (len(faults) != 1 || faults[0].Column != "time") {
			t.Errorf("%s: %v", cell, faults)
		}
	}
}

func TestAPieceIsNamedByIdLabelMarkOrName(t *testing.T) {
	d := modeltest.Yard()
	l := modeltest.New("A", d)
	l.Open("S")
	for i := range d.Items {
		it := d.Items[i]
		for _, cell := range []string{it.ID, code.Label(code.Piece, it.ID)} {
			w, faults := read(t, d, tarpsheet.Line{Time: "1", Piece: cell, To: "tarp"})
			if a := w.Act(l.State, "S", "M1"); len(faults) > 0 || a.Item != it.ID || a.By != "M1" {
				t.Errorf("%s: %+v %v", cell, a, faults)
			}
		}
	}
	twins := d.Clone()
	for i := range twins.Items {
		twins.Items[i].Name = "Same  name"
	}
	if _, faults := read(t, twins.Index(), tarpsheet.Line{Time: "1", Piece: "same name", To: "tarp"}); len(faults) != 1 || faults[0].Column != "piece" {
		t.Errorf("twins: %v", faults)
	}
}

// Whatever is written, the act that comes of it is one that the judge can
// read: it never says that the row is bad.
func TestEveryLineThatIsReadIsAnActTheJudgeCanRead(t *testing.T) {
	for seed := range uint64(40) {
		r := modeltest.Rand(seed)
		d := modeltest.Department(r)
		l := modeltest.New("A", d)
		l.Open("S")
		for range 60 {
			l.Do(modeltest.Entry(r, l, "A", "B"))
			items := l.State.Dept.Items
			if len(items) == 0 {
				continue
			}
			line := tarpsheet.Line{Time: "1", Quantity: []string{"", "1", "3", "?"}[r.IntN(4)], Piece: items[r.IntN(len(items))].ID,
				To: []string{"tarp", "home", "at:V1", "with:X", "used", "?", "charger", "bag"}[r.IntN(8)], Who: "crew"}
			out, faults := tarpsheet.Read(l.State.Dept, opened, late, []tarpsheet.Line{line})
			if len(faults) > 0 {
				t.Fatalf("seed %d: %v", seed, faults)
			}
			a := out[0].Act(l.State, "S", "M1")
			f := l.Fork("P")
			if e := f.Do(model.Entry{Act: a, Scene: "S"}); slices.Contains(e.Reply.Reasons, "bad_row") || slices.Contains(e.Reply.Reasons, "bad_reading") {
				t.Fatalf("seed %d: %+v became %+v: %+v", seed, line, a, e.Reply)
			}
		}
	}
}

func TestAPieceThatNoTableHasIsKeptInItsWords(t *testing.T) {
	for cell, want := range map[string]string{
		"unknown: red  blanket": "red blanket", "Unknown:tow cable": "tow cable", tarpsheet.InWords("wedge"): "wedge",
	} {
		if got, ok := tarpsheet.Words(cell); !ok || got != want {
			t.Errorf("%q is kept as %q, %v", cell, got, ok)
		}
	}
	for _, cell := range []string{"unknown", "?", "unknown: ", "red blanket", "known: red"} {
		if got, ok := tarpsheet.Words(cell); ok {
			t.Errorf("%q is taken for words: %q", cell, got)
		}
	}
}

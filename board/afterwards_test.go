package board_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"tarpside/model"
	"tarpside/model/tarpsheet"
)

// paper enters lines of "time|quantity|piece|to|who".
func paper(t *testing.T, b *tablet, lines ...string) []model.Entry {
	t.Helper()
	entries, faults, err := b.EnterPaper(sheetLines(lines...), "M04", false)
	if err != nil || len(faults) > 0 {
		t.Fatalf("%v %v", faults, err)
	}
	return entries
}

func sheetLines(lines ...string) (out []tarpsheet.Line) {
	for i, l := range lines {
		c := strings.Split(l, "|")
		out = append(out, tarpsheet.Line{Row: i + 2, Time: c[0], Quantity: c[1], Piece: c[2], To: c[3], Who: c[4]})
	}
	return out
}

// died is a tablet that logged a little from 18:50 on and stopped at 19:00;
// it is 21:00 now.
func died(t *testing.T) *tablet {
	t.Helper()
	b := newTablet(t, "A").withDemo(t)
	b.begin(t, "Bridge")
	b.log(t, act(model.PullOff, 1, "R41-003", "home", "tarp"))
	b.log(t, act(model.PullOff, 6, "R41-059", "home", "tarp"))
	b.clock.now = evening.Add(130 * time.Minute)
	return b
}

func TestPaperStandsInItsMinuteAndIsMarked(t *testing.T) {
	b := died(t)
	entries := paper(t, b, "19:10|4|R41-059|V1|Doyle", "19:05||R41-003|V2|M06", "35|2|r41-059|v1|")
	var times []string
	for _, e := range entries {
		times = append(times, time.UnixMilli(e.At()).UTC().Format("15:04"))
		if e.Entered != b.clock.now.UnixMilli() || !strings.HasPrefix(e.Note, "from paper") || !strings.HasPrefix(e.Device, "paper-") || e.By != "M04" {
			t.Errorf("not marked: %+v", e)
		}
		if e.Reply.Word != model.OK && e.Reply.Word != model.Warned {
			t.Errorf("%+v", e.Reply)
		}
	}
	if want := []string{"19:05", "19:10", "19:25"}; !slices.Equal(times, want) {
		t.Errorf("at %v, want %v", times, want)
	}
	if b.n(t, "R41-003", "at:V2") != 1 || b.n(t, "R41-059", "at:V1") != 6 {
		t.Errorf("the light: %+v, the blocks: %+v", b.Picture().State.LineOf("R41-003").Stacks, b.Picture().State.LineOf("R41-059").Stacks)
	}
	// What is logged after stands after it, with the paper seen.
	e := b.log(t, act(model.Return, 1, "R41-003", "at:V2", "tarp"))
	if e.Reply.Word == model.Refused || e.Reply.Word == model.Contested {
		t.Errorf("%+v", e.Reply)
	}
	b.sound(t)
	b.reopen(t)
	b.sound(t)
}

func TestPaperThatContradictsTheLogIsAClaimBesideIt(t *testing.T) {
	for _, c := range []struct {
		name, line string
		place      string // where the board has it: the later word
	}{
		{"paper before the log", "19:40||R41-003|V1|M06", "at:V2"},
		{"paper after the log", "20:10||R41-003|V1|M06", "at:V1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := died(t)
			b.clock.now = evening.Add(70 * time.Minute) // 20:00: another hand has the tablet
			logged := b.log(t, act(model.Hand, 1, "R41-003", "tarp", "at:V2"))
			b.clock.now = evening.Add(130 * time.Minute)
			// The sheet was begun at 19:05, before that.
			paper(t, b, "19:05|1|R41-059|V1|", c.line)
			l := b.Picture().State.LineOf("R41-003")
			if l.Contest == nil || len(l.Contest.Claims) != 2 {
				t.Fatalf("no two claims: %+v", l.Contest)
			}
			if b.n(t, "R41-003", c.place) != 1 {
				t.Errorf("it is at %+v", l.Stacks)
			}
			for _, e := range entriesIn(t, b.path) {
				if e.ID == logged.ID && (e.Reply.Word != logged.Reply.Word || e.To != logged.To) {
					t.Error("what was logged was changed")
				}
			}
			b.sound(t)
			other := newTablet(t, "B")
			other.add(t, entriesIn(t, b.path)...)
			alike(t, b, other)
			settle := b.log(t, model.Act{Verb: model.Settle, By: "M06", Item: "R41-003", Quantity: 1, To: "at:V1", Note: "seen"})
			if settle.Reply.Word == model.Refused || b.Picture().State.LineOf("R41-003").Contest != nil {
				t.Errorf("it is not settled: %+v", settle.Reply)
			}
		})
	}
}

func TestWhatCannotBeReadIsUnknown(t *testing.T) {
	b := died(t)
	entries := paper(t, b, "19:10|?|R41-059|unknown|?", "?|1|?|V1|M06", "19:20|1|unknown|home|")
	if e := entries[0]; e.To != "at:unknown" || e.Holder != "unknown" || e.Quantity != 1 || !strings.Contains(e.Note, "quantity, to, who") {
		t.Errorf("%+v", e)
	}
	for _, e := range entries[1:] {
		if e.Item != "unknown" || !e.Reply.Has("unknown_item") || e.Reply.Word != model.Warned {
			t.Errorf("%+v %+v", e.Act, e.Reply)
		}
	}
	if at := entries[1].At(); at != entries[0].At() {
		t.Errorf("the unknown time is %d", at)
	}
	if !slices.Contains(b.Picture().State.Scene(b.Picture().Scene).Unknown, "unknown") {
		t.Error("the close would not ask what it was")
	}
}

func TestALineOfPaperThatCannotBeRightStopsAllAndIsNamed(t *testing.T) {
	b := died(t)
	gen := b.Picture().Gen
	lines := sheetLines("25:00|1|R41-003|V1|", "19:10|0|R41-003|V1|", "19:10|1|excavator|V1|", "19:10|1|R41-003|nowhere|", "22:30|1|R41-003|V1|", "19:10|1|R41-003|V1|")
	_, faults, err := b.EnterPaper(lines, "M04", false)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, f := range faults {
		got = append(got, f.Column)
		if f.Row != len(got)+1 || f.Wrong == "" || f.Right == "" {
			t.Errorf("%+v", f)
		}
	}
	if want := []string{"time", "quantity", "piece", "to", "time"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if b.Picture().Gen != gen {
		t.Error("something was logged")
	}
}

func TestPaperIsTriedBeforeItIsLogged(t *testing.T) {
	b := died(t)
	gen, n := b.Picture().Gen, len(entriesIn(t, b.path))
	lines := sheetLines("19:10|40|R41-059|V1|", "19:11|4|R41-059|V1|", "20:00|2|R41-059|home|", "20:01|2|R41-059|tarp|")
	lines[3].From = "V1"
	entries, _, err := b.EnterPaper(lines, "M04", true)
	if err != nil || len(entries) != 4 {
		t.Fatalf("%d, %v", len(entries), err)
	}
	if entries[0].Reply.Word != model.Refused || entries[1].Reply.Word == model.Refused || entries[2].Verb != model.Stow || entries[3].Verb != model.Return {
		t.Errorf("%+v", entries)
	}
	if b.Picture().Gen != gen || len(entriesIn(t, b.path)) != n {
		t.Error("a trial logged something")
	}
}

func TestPaperNeedsAScene(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	_, faults, err := b.EnterPaper(sheetLines("19:10|1|R41-003|V1|"), "M04", false)
	if err != nil || len(faults) != 1 || !strings.Contains(faults[0].Wrong, "no scene") {
		t.Errorf("%v %v", faults, err)
	}
}

package model_test

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model"
	"tarpside/model/judge"
	"tarpside/model/modeltest"
)

// started is a log with a random department and an open scene.
func started(t *rapid.T) *modeltest.Log {
	l := modeltest.New("A", modeltest.Department(modeltest.Rand(rapid.Uint64().Draw(t, "department"))))
	l.Open("S", "")
	return l
}

// rows draws a seed for each of some rows: few, more or many.
func rows(t *rapid.T, most int) []uint64 {
	least := rapid.SampledFrom([]int{0, most / 4, most / 2}).Draw(t, "least")
	return rapid.SliceOfN(rapid.Uint64(), least, most).Draw(t, "rows")
}

// said tells what the entry was, for a failure.
func said(e *model.Entry) string {
	return fmt.Sprintf("%s %s %d %q>%q %q by %s seen %v: %v %v %v", e.Verb, e.Item, e.Quantity, e.From, e.To, e.Reading,
		e.Stamp.Device, e.Seen, e.Reply.Word, e.Reply.Reasons, e.Moves)
}

func TestAfterEveryRowTheBooksAddUpAndARefusedOneChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := started(t)
		for _, seed := range rows(t, 60) {
			before := l.State
			was := modeltest.Picture(before)
			e := l.Do(modeltest.Entry(modeltest.Rand(seed), l, "A", "B", "C"))
			if err := modeltest.Check(l.State); err != nil {
				t.Fatalf("%s\n%v", said(e), err)
			}
			if modeltest.Picture(before) != was {
				t.Fatalf("%s\nchanged the board that was already shown", said(e))
			}
			if !e.Taken() && (modeltest.Picture(l.State) != was || len(e.Reply.Reasons) != 1) {
				t.Fatalf("%s\nwas refused and changed the board", said(e))
			}
			if e.Reply.Word == model.OK && slices.ContainsFunc(e.Reply.Reasons, warns) ||
				e.Reply.Word == model.Warned && !slices.ContainsFunc(e.Reply.Reasons, warns) {
				t.Fatalf("%s\nthe word does not go with the reasons", said(e))
			}
		}
	})
}

func warns(reason string) bool {
	return !slices.Contains([]string{judge.StraightOff, judge.TwoPerson, judge.Overridden, judge.ShortUsable}, reason)
}

func TestTheMovesOfAReplyAreWhatTheBoardDid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := started(t)
		books := map[string]map[model.Place]int{}
		for i := range l.State.Dept.Items {
			books[l.State.Dept.Items[i].ID] = map[model.Place]int{l.State.HomeOf(i): l.State.Dept.Items[i].Quantity}
		}
		for _, seed := range rows(t, 60) {
			e := l.Do(model.Entry{Act: modeltest.Act(modeltest.Rand(seed), l.State)})
			for _, m := range e.Moves {
				b := books[m.Item]
				if b[m.From] -= m.N; b[m.From] < 0 || m.N <= 0 {
					t.Fatalf("%s\ntook %d too many", said(e), -b[m.From])
				}
				b[m.To] += m.N
			}
			for i := range l.State.Dept.Items {
				for p, n := range books[l.State.Dept.Items[i].ID] {
					if got := l.State.Line(i).N(p); got != n {
						t.Fatalf("%s\n%s has %d at %s, by the replies %d", said(e), l.State.Dept.Items[i].ID, got, p, n)
					}
				}
			}
		}
	})
}

func TestAnyOrderOfArrivalGivesTheLiveBoard(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := started(t)
		for _, seed := range rows(t, 60) {
			l.Do(modeltest.Entry(modeltest.Rand(seed), l, "A", "B", "C"))
		}
		same(t, shuffled(t, l.Entries), l.State)
	})
}

// shuffled is the entries in any order, some of them twice.
func shuffled(t *rapid.T, entries []model.Entry) []model.Entry {
	twice := slices.Concat(entries, entries)
	twice = twice[:len(entries)+rapid.IntRange(0, len(entries)).Draw(t, "twice")]
	return rapid.Permutation(twice).Draw(t, "arrival")
}

func same(t *rapid.T, entries []model.Entry, live *model.State) {
	s := model.Fold(entries)
	if got, want := modeltest.Picture(s), modeltest.Picture(live); got != want {
		t.Fatalf("folded\n%s\nlive\n%s", got, want)
	}
	if !sameVector(s.Seen(), live.Seen()) {
		t.Fatalf("folded %v, live %v", s.Seen(), live.Seen())
	}
}

func sameVector(a, b model.Vector) bool {
	covers := func(a, b model.Vector) bool {
		for d, n := range b {
			if !a.Covers(d, n) {
				return false
			}
		}
		return true
	}
	return covers(a, b) && covers(b, a)
}

func TestDevicesThatWereCutOffShowOneBoardOnceTheyMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := started(t)
		for _, seed := range rows(t, 15) {
			a.Do(modeltest.Entry(modeltest.Rand(seed), a))
		}
		b, c := a.Fork("B"), a.Fork("C")
		if rapid.Bool().Draw(t, "B's clock is far ahead") {
			b.Clock.Wall += 2 * model.FarAhead
		}
		for round := range rapid.IntRange(1, 2).Draw(t, "rounds") {
			for _, l := range []*modeltest.Log{a, b, c} {
				l.Clock.Wall += int64(rapid.IntRange(0, 60).Draw(t, "clock"))
				for _, seed := range rows(t, 12) {
					e := l.Do(modeltest.Entry(modeltest.Rand(seed), l))
					if err := modeltest.Check(l.State); err != nil {
						t.Fatalf("round %d, %s: %s\n%v", round, l.Device, said(e), err)
					}
				}
			}
			if rapid.Bool().Draw(t, "a and b meet first") {
				a.Hear(b)
			}
			c.Hear(a)
			c.Hear(b)
			a.Hear(c)
			b.Hear(c)
			for _, l := range []*modeltest.Log{a, b} {
				same(t, shuffled(t, l.Entries), c.State)
			}
			if err := modeltest.Check(c.State); err != nil {
				t.Fatalf("where they met: %v", err)
			}
		}
	})
}

func TestAPieceThatTwoDevicesTookToDifferentPlacesIsContestedUntilSomebodyWhoSawBothSettlesIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := modeltest.New("A", modeltest.Yard())
		a.Open("S", "")
		a.Do(model.Entry{Act: model.Act{Verb: model.PullOff, Item: "LIGHT", Quantity: 1, From: "home", To: "tarp"}})
		b := a.Fork("B")
		ends := map[*modeltest.Log]string{}
		for _, l := range []*modeltest.Log{a, b} {
			at := "tarp"
			l.Clock.Wall += int64(rapid.IntRange(0, 50).Draw(t, "clock"))
			for range rapid.IntRange(1, 4).Draw(t, "moves") {
				to := rapid.SampledFrom([]string{"at:V1", "at:V2", "at:V3", "with:MED9"}).Draw(t, "to")
				if to == at {
					continue
				}
				e := l.Do(model.Entry{Act: model.Act{Verb: model.Seen, Item: "LIGHT", Quantity: 1, From: at, To: to}})
				if !e.Taken() {
					t.Fatal(said(e))
				}
				at = to
			}
			ends[l] = at
		}
		a.Hear(b)
		b.Hear(a)
		if modeltest.Picture(a.State) != modeltest.Picture(b.State) {
			t.Fatal("two boards")
		}
		if ends[a] == ends[b] {
			return
		}
		if a.State.LineOf("LIGHT").Contest == nil {
			t.Fatalf("A left it at %s and B at %s: nobody is told, it is shown at %v", ends[a], ends[b], a.State.LineOf("LIGHT").Stacks)
		}
		end := model.Act{Verb: model.Settle, Item: "LIGHT", Quantity: 1, To: "at:V1"}
		if rapid.Bool().Draw(t, "by a move") {
			p := a.State.LineOf("LIGHT").Stacks[0].Place.String()
			end = model.Act{Verb: model.Seen, Item: "LIGHT", Quantity: 1, From: p, To: p}
		}
		if e := a.Do(model.Entry{Act: end}); !e.Taken() || a.State.LineOf("LIGHT").Contest != nil {
			t.Fatalf("%s\ndoes not settle it", said(e))
		}
		b.Hear(a)
		same(t, b.Entries, a.State)
	})
}

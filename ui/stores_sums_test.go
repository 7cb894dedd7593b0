package ui

import (
	"slices"
	"strings"
	"testing"

	"tarpside/model"
	"tarpside/model/restock"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// The spreader of the demo weighs 46 lb and its limit is 29.0 lb: an index of
// 1.58, under the line of 2. The generator, 78 lb, is over 51 lb.
func TestLiftMarksAreProposedFromWeightAndHeightAndSayTheirSource(t *testing.T) {
	w := demoAt(t, 60, ScreenStores, glass1280, look.Options{})
	n := w.shell.now()
	for _, c := range []struct {
		item              string
		two, hand, wanted bool
	}{
		{"R41-001", false, false, false},
		{"R41-061", true, false, false}, // marked already
		{"R41-011", false, false, false},
	} {
		m, wanting, ok := n.proposed(n.d, n.d.Item(c.item))
		if !ok || m.TwoPerson != c.two || m.HandUp != c.hand || wanting != c.wanted {
			t.Errorf("%s: %+v, wanting %v", c.item, m, wanting)
		}
	}
	text := n.markText("R41-001")
	for _, want := range []string{"46 lb", "29.0 lb", "index", "94-110", "Does not apply:", "an officer decides"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q does not say %q", text, want)
		}
	}
}

func TestALiftMarkIsAppliedOnlyByTheTouchOfAName(t *testing.T) {
	w := demoAt(t, 60, ScreenStores, glass1280, look.Options{})
	w.tap(parts.KindAct, "lift-marks")
	n := w.shell.now()
	item := w.firstOf(parts.KindPiece)
	m, wanting, _ := n.proposed(n.d, n.d.Item(item))
	if !wanting {
		t.Fatalf("%s stands in the list and nothing of it is wanting", item)
	}
	before := w.entries()
	w.tap(parts.KindPiece, item)
	if w.entries() != before {
		t.Fatal("the proposal was applied by being looked at")
	}
	w.inEachLook(func() { w.noCuts("lift marks", 60) })
	w.tap(parts.KindMember, "M02")
	e := w.last()
	it := w.board.Picture().State.Wanted().Item(item)
	if e.Verb != model.Stores || e.By != "M02" || m.TwoPerson && !it.TwoPerson || m.HandUp && it.Extra[handUp] != "yes" {
		t.Errorf("logged %s by %q; the line %+v", e.Verb, e.By, it)
	}
	if w.shell.by == "M02" {
		t.Error("the tablet has changed hands")
	}
	if p, _ := w.find(parts.KindText, "as-proposed"); !strings.Contains(p.Text, "Nothing to apply") {
		t.Errorf("after it was applied: %+v", p)
	}
}

// The short glass kit of the demo is usable with one of its two punches.
func TestSetsNameTheMissingKeyAndDatesAreAskedFor(t *testing.T) {
	w := demoAt(t, 177, ScreenStores, glass1280, look.Options{})
	w.tap(parts.KindAct, "sets-dates")
	p, ok := w.find(parts.KindPiece, "R41-021")
	if !ok || !strings.Contains(p.Text, "1 spring punch") || !strings.Contains(p.Text, "short, usable") {
		t.Errorf("the glass kit: %+v", p)
	}
	w.inEachLook(func() { w.noCuts("sets and dates", 177) })
	all := ""
	for _, r := range w.shell.over[0].(*rowList).rows(w.shell.now()) {
		all += r.view.Title + ": " + r.view.Right + "\n"
	}
	if !strings.Contains(all, "12 road flares: no date: read it") {
		t.Errorf("a line that has a date to be read is not asked for: %s", all)
	}
}

// restock.csv of the demo: what is ordered, in whole packs.
func TestTheOrderListIsInPacksOfTheSupplier(t *testing.T) {
	w := demoAt(t, 180, ScreenBringBack, glass1280, look.Options{})
	w.tap(parts.KindAct, tabRestock)
	w.tap(parts.KindAct, "order-list")
	found := 0
	for _, p := range w.parts {
		if strings.HasPrefix(p.ID, "order-ST") {
			found++
			if !strings.Contains(p.Text, "pack") {
				t.Errorf("%q", p.Text)
			}
		}
	}
	if found == 0 {
		t.Error("nothing is ordered after a scene that used 45 pieces")
	}
	w.inEachLook(func() { w.noCuts("order list", 180) })
}

func TestARestockRowSaysTheFullSetAndThatDataIsFew(t *testing.T) {
	w := demoAt(t, 180, ScreenBringBack, glass1280, look.Options{})
	w.tap(parts.KindAct, tabRestock)
	for _, p := range append([]parts.Part(nil), w.parts...) {
		if !strings.HasPrefix(p.ID, "stock-ST") {
			continue
		}
		w.tap(parts.KindAct, p.ID)
		w.textHas("fact", "full set")
	}
	n := w.shell.now()
	for id, want := range map[string]bool{"ST22": true, "ST13": false} { // a punch in twenty weeks; eight pads a week
		facts := n.stockFacts(restock.Row{Stock: n.d.StockLine(id)})
		if got := slices.ContainsFunc(facts, func(f [2]string) bool { return strings.Contains(f[1], "few data") }); got != want {
			t.Errorf("%s: few data %v, want %v: %v", id, got, want, facts)
		}
	}
	w.inEachLook(func() { w.noCuts("restock", 180) })
}

func TestNonsenseIsRefusedInWordsWhereverAReadingIsTyped(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	n := w.shell.now()
	for _, c := range []struct{ item, check, typed, want string }{
		{"R41-111", "oxygen", "11500", "11500 psi is more than a D cylinder holds; did you mean 1150?"},
		{"R41-005", "battery", "820", "820 % is more than full; did you mean 82?"},
		{"R41-061", "fuel", "750", "750 % is more than a full tank; did you mean 75?"},
		{"R41-069", "bars", "30", "30 bars are more than it has; did you mean 3?"},
		{"R41-085", "air", "45000", "45000 psi is more than any set holds; did you mean 4500?"},
		{"R41-005", "battery", "123", "123 % is more than full: it is from 0 to 100; look again"},
	} {
		i := n.d.ItemIndex(c.item)
		ask, _ := n.d.Items[i].Ask(c.check)
		tone, title, words, ok := n.verdict(piece{line: i, item: &n.d.Items[i]}, ask, c.typed)
		if ok || tone != parts.Alarm || title != "Cannot be" || !strings.Contains(words, c.want) {
			t.Errorf("%s %s: %q, %v", c.check, c.typed, words, ok)
		}
	}
}

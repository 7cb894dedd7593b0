package ui

import (
	"slices"
	"strings"
	"testing"

	"tarpside/model/look"
	"tarpside/ui/parts"
)

// oddsOf are the hunt of an item, what the log knows of it, and the open steps
// in the order in which they are asked, by their keys.
func oddsOf(w *window, item string) (hunt, trail, []string) {
	n := w.shell.now()
	for _, h := range n.hunts() {
		if n.d.Items[h.line].ID != item {
			continue
		}
		t := n.trail(h.line)
		_, now, later := order(n.steps(h, t, 0))
		var keys []string
		if now != nil {
			keys = append(keys, now.key)
		}
		for _, s := range later {
			keys = append(keys, s.key)
		}
		return h, t, keys
	}
	w.t.Fatalf("%s is not looked for", item)
	return hunt{}, trail{}, nil
}

// The spring punch was last at V1 with a member who can be asked by radio: to
// ask costs a minute and comes before the walk, as in the worked sums.
func TestPlacesAreInTheOrderOfChanceTimesSightByMinute(t *testing.T) {
	w := lookAt(t, 153)
	h, tr, got := oddsOf(w, "R41-023")
	n := w.shell.now()
	steps := n.steps(h, tr, 0)
	places := look.Usual().Places(n.oddsClues(h, tr, steps))
	if got[0] != "its own place, counted again" || got[len(got)-1] != "under vehicles and debris" {
		t.Errorf("first %q, last %q", got[0], got[len(got)-1])
	}
	value := map[string]float64{}
	for _, p := range places {
		key := p.ID
		if key == "tarp" {
			key = tarpKey
		}
		value[key] = p.Value()
	}
	for i := 2; i < len(got)-1; i++ {
		if value[got[i]] > value[got[i-1]]+1e-12 {
			t.Errorf("%q is worth %v and stands after %q with %v", got[i], value[got[i]], got[i-1], value[got[i-1]])
		}
	}
	if len(value) != len(got)-2 {
		t.Errorf("%d places have odds, %d are shown between the first and the last", len(value), len(got)-2)
	}
	if !strings.HasPrefix(got[1], "ask the last holder") {
		t.Errorf("order %q", got)
	}
}

func TestALookThatFoundNothingChangesTheOrder(t *testing.T) {
	w := lookAt(t, 153)
	w.tap(parts.KindPiece, "R41-023")
	_, _, before := oddsOf(w, "R41-023")
	w.tap(parts.KindAct, "not-here") // counted again
	w.tap(parts.KindAct, "not-here") // the holder says no
	h, tr, after := oddsOf(w, "R41-023")
	if slices.Contains(after, before[1]) {
		t.Errorf("%q was asked and is asked again: %q", before[1], after)
	}
	n := w.shell.now()
	if got := n.failed(tr, n.steps(h, tr, 0)); !slices.Equal(got, before[:2]) {
		t.Errorf("the odds know of %q, want %q", got, before[:2])
	}
	w.tap(parts.KindAct, "skip")
	w.tap(parts.KindAct, "wrong-tap")
	if _, _, again := oddsOf(w, "R41-023"); !slices.Equal(again, before[1:]) {
		t.Errorf("after a wrong tap %q, want %q", again, before[1:])
	}
}

func TestWithAPieceOfTheSetGoneToAnAgencyThatAgencyIsAskedFirst(t *testing.T) {
	w := lookAt(t, 153)
	if _, _, got := oddsOf(w, "R41-133"); got[1] != "ask MED9" {
		t.Errorf("the head block set: order %q", got)
	}
	if _, _, got := oddsOf(w, "R41-023"); slices.Index(got, "ask MED9") <= slices.IndexFunc(got, func(s string) bool { return strings.HasPrefix(s, "ask the last holder") }) {
		t.Errorf("the spring punch: order %q", got)
	}
}

func TestStartingChancesInSettingsChangeTheOrder(t *testing.T) {
	w := lookAt(t, 153)
	_, _, before := oddsOf(w, "R41-023")
	w.shell.Go(ScreenSettings)
	w.tap(parts.KindAct, "limits")
	w.tap(parts.KindAct, "limit-sums")
	w.tap(parts.KindAct, "limit-chance")
	for _, c := range []struct{ key, digits string }{{"chance-slots", "90"}, {"chance-last", "0"}, {"chance-holder", "0"}} {
		w.tap(parts.KindAct, c.key)
		for _, d := range c.digits {
			w.tap(parts.KindDigit, string(d))
		}
		w.tap(parts.KindDigit, "done")
	}
	_, _, after := oddsOf(w, "R41-023")
	if after[1] != "other slots of R41" || before[1] == after[1] {
		t.Errorf("order %q, before %q", after, before)
	}
}

func TestNoChanceIsShownAsANumber(t *testing.T) {
	w := lookAt(t, 153)
	for _, p := range w.parts {
		if (p.ID == "step" || p.ID == "later" || p.ID == "looked") && (strings.Contains(p.Text, "%") || strings.Contains(p.Text, "0.")) {
			t.Errorf("%q", p.Text)
		}
	}
}

package ui

import (
	"strings"
	"testing"
	"time"

	"tarpside/model"
)

func TestTheCheckIsBlindAndSaysInAlarmThatItIsNotDone(t *testing.T) {
	w := trailAt(t)
	w.mustTouch("act step-load") // nothing is begun
	if p, _ := w.find("act", "step-check"); p.State != "" || !strings.Contains(p.Text, "not checked yet") {
		t.Errorf("at rest the step says %q, %s", p.Text, p.State)
	}
	w.mustTouch("act step-check")
	if p, _ := w.find("act", "anyway"); strings.Contains(p.Text, "Not verified") {
		t.Errorf("before anything is begun a key says %q", p.Text)
	}
	w.mustTouch("act step-trip")
	w.mustTouch(summerTrip...)
	w.walkers(3)
	w.mustTouch("act step-load")
	if p, _ := w.find("act", "step-check"); p.State != "alarm" || !strings.Contains(p.Text, "not done") {
		t.Errorf("the step says %q, %s", p.Text, p.State)
	}
	w.mustTouch("act step-check", "act here") // the litter; now its straps, of which there are five
	for _, p := range w.parts {
		if p.ID == "S44-002" || p.ID == "ask" || p.ID == "verdict" {
			if strings.Contains(p.Text, "5") {
				t.Errorf("%s tells the figure: %q", p.ID, p.Text)
			}
		}
	}
	w.mustTouch("digit 4", "digit done")
	if p, _ := w.find("piece", "S44-002"); p.State != "short" || !strings.Contains(p.Text, "4 of 5: 1 short") {
		t.Errorf("4 of 5 straps: %q, %s", p.Text, p.State)
	}
	if got := w.countAt("S44-002", "unexplained"); got != 1 {
		t.Errorf("%d straps are looked for", got)
	}
	w.mustTouch("piece S44-002", "digit 6", "digit done")
	if p, _ := w.find("piece", "S44-002"); p.State != "short" || !strings.Contains(p.Text, "1 too many") || w.board.Picture().State.AnyExtra(w.shell.now().d.ItemIndex("S44-002")) != 1 {
		t.Errorf("6 of 5 straps: %q, %s", p.Text, p.State)
	}
	w.mustTouch("piece S44-002", "digit 5", "digit done") // there it was
	if p, _ := w.find("piece", "S44-002"); p.State != "seen" || w.countAt("S44-002", "unexplained") != 0 {
		t.Errorf("counted again: %q, %s", p.Text, p.State)
	}
}

func TestOnlyTwoDifferentPeopleVerifyALoad(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(3)
	w.mustTouch("act step-check")
	if n := w.lookAtAll(nil); n < 15 {
		t.Errorf("only %d lines were asked", n)
	}
	w.mustTouch("act first", "member M02")
	if _, ok := w.find("act", "walk"); ok || w.trailView().sure {
		t.Error("one name is enough")
	}
	w.mustTouch("act second")
	if _, ok := w.find("member", "M02"); ok {
		t.Error("the first can be the second")
	}
	w.mustTouch("member M03")
	if got := w.text("verified"); !strings.Contains(got, "Verified") || !strings.Contains(got, "two people") {
		t.Errorf("%q", got)
	}
	w.mustTouch("act walk")
	var note *model.Entry
	all := w.board.Picture().Entries
	for i := range all {
		if all[i].Verb == model.Note && all[i].By == "M02" && all[i].Holder == "M03" {
			note = &all[i]
		}
	}
	if note == nil {
		t.Error("the log does not say who verified it")
	}
}

func TestAnUnverifiedLoadWalksOnlyWithANameAndAReason(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(3)
	w.mustTouch("act step-check", "act anyway")
	for _, k := range whyAnyway {
		if _, ok := w.find("act", k.id); ok {
			t.Errorf("%s without a name", k.id)
		}
	}
	w.mustTouch("act first", "member M02", "act why-urgent")
	if w.trailView().away == 0 {
		t.Error("it did not walk")
	}
}

// What went in comes back: by the foot, by the lines, by the tally.
func TestTheTrailLoadIsConservedFromTheRigToTheTarp(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(3)
	before := w.trailView().load.Lb
	w.mustTouch("act step-check")
	w.lookAtAll(nil)
	w.mustTouch("act first", "member M02", "act second", "member M03", "act walk")
	v := w.trailView()
	pieces := 0
	for _, l := range v.lines {
		if l.Goes() {
			if got := w.countAt(l.Item, "at:Trail"); got != l.N {
				t.Errorf("%d %s walked, want %d", got, l.Name, l.N)
			}
			pieces += l.N
		}
	}
	if v.away != pieces || v.load.Lb != before || v.needls != 0 {
		t.Errorf("%d pieces with the party, want %d; %v lb, want %v; %v needless", v.away, pieces, v.load.Lb, before, v.needls)
	}
	took := map[string]int{}
	for _, x := range v.out {
		took[x.Item] = x.Took
	}
	w.lookAtAll(map[string]int{"S44-022": 9, "S44-004": 0}) // six waters drunk, the helmet lies in the brush
	if got := w.text("counted"); !strings.Contains(got, "Patient helmet: 1 short") {
		t.Errorf("at the patient: %q", got)
	}
	if p, _ := w.find("act", "look-for-it"); p.ID == "" {
		t.Error("it is not to be looked for here")
	}
	if used, lost := w.countAt("S44-022", "used"), w.countAt("S44-004", "unexplained"); used < 6 || lost != 1 {
		t.Errorf("%d waters used, %d helmets looked for", used, lost)
	}
	w.mustTouch("piece S44-004", "act here", "act count-again")
	w.lookAtAll(nil)
	if got := w.text("counted"); !strings.Contains(got, "Everything is here") {
		t.Errorf("before the walk back: %q", got)
	}
	for _, x := range w.trailView().out {
		if x.Took != took[x.Item] || x.Took != x.Back()+x.Used+x.Gave {
			t.Errorf("%+v, took %d", x, took[x.Item])
		}
	}
	w.mustTouch("act step-check")
	if p, _ := w.find("act", "walk"); p.State != "off" {
		t.Errorf("what was drunk is to walk again: %q", p.Text)
	}
	w.mustTouch("act step-count", "act all-back")
	if got := w.text("empty"); !strings.Contains(got, "Back on the tarp") {
		t.Errorf("all is back, and the screen says %q", got)
	}
	v = w.trailView()
	if v.away != 0 {
		t.Errorf("%d pieces are still with the party", v.away)
	}
	for _, x := range v.out {
		if x.Back() > 0 {
			t.Errorf("%+v did not come back", x)
		}
	}
	if bad := w.board.Picture().State.Unbalanced(); len(bad) > 0 {
		t.Errorf("lines do not add up: %v", bad)
	}
	if got := w.text("proof"); got != "" && strings.Contains(got, "Does not") {
		t.Errorf("the foot says %q", got)
	}
}

func TestThePartyIsThereAgainAfterACrash(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(2)
	w.mustTouch("act step-load", "piece S44-011", "act leave", "act all-same", "act step-check", "act here")
	bar := w.text("weight")
	again := New(Options{Board: w.board, Now: func() time.Time { return w.now }, Post: func(f func()) { f() }, SetTheme: w.shell.opts.SetTheme, Screen: ScreenTrail, Practice: true})
	v := again.screens[ScreenTrail].(*trailScreen)
	a, b, c := v.weight().words()
	if got := join(a, b, c); got != bar || v.v.seen != 1 {
		t.Errorf("after a start the bar says %q, want %q; %d seen", got, bar, v.v.seen)
	}
	scene := w.shell.now().scene.ID
	if err := w.board.SetSetting("party:"+scene, "{no party"); err != nil {
		t.Fatal(err)
	}
	if p := w.board.Party(scene); len(p.People) != 0 {
		t.Errorf("what cannot be read gives %+v", p)
	}
}

func TestTheCountSaysWhatStartsTheWalkAndLeadsThereStepByStep(t *testing.T) {
	w := trailAt(t)
	next := func(id, says string) {
		t.Helper()
		w.mustTouch("act step-count")
		if got := w.text("empty"); !strings.Contains(got, "The walk starts on 4 Check") || !strings.Contains(got, "Walk with it") {
			t.Errorf("the step says %q", got)
		}
		if p, ok := w.find("act", id); !ok || !strings.Contains(p.Text, says) {
			t.Fatalf("no key %s that says %q: %+v", id, says, p)
		}
		w.mustTouch("act " + id)
	}
	next("to-trip", "say the season")
	w.mustTouch(summerTrip...)
	next("to-people", "who walks")
	w.walkers(3)
	next("to-check", "two look")
	w.lookAtAll(nil)
	w.mustTouch("act first", "member M02", "act second", "member M03")
	next("to-check", "Walk with it")
	w.mustTouch("act walk")
	if got := w.text("empty"); got != "" || w.trailView().away == 0 {
		t.Errorf("the load walks, and the count says %q", got)
	}
	if p, _ := w.find("act", "step-check"); p.State != "" || !strings.Contains(p.Text, "verified") {
		t.Errorf("a checked load walks, and its check says %q, %s", p.Text, p.State)
	}
}

func TestALoadThatWalksUncheckedIsAnAlarmThoughNobodyWasNamed(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	if p, _ := w.find("act", "step-check"); p.State != "" {
		t.Errorf("nobody walks yet: %q, %s", p.Text, p.State)
	}
	w.mustTouch("act step-check", "act anyway", "act first", "member M02", "act why-urgent")
	if p, _ := w.find("act", "step-check"); p.State != "alarm" || !strings.Contains(p.Text, "not done") || w.trailView().away == 0 {
		t.Errorf("it walks unchecked: %q, %s", p.Text, p.State)
	}
}

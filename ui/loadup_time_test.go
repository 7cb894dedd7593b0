package ui

import (
	"strings"
	"testing"

	"tarpside/model/clearup"
	"tarpside/ui/parts"
)

func TestTheTimeLeftIsARangeByTableThenByThisCrewsOwnPace(t *testing.T) {
	early := atRig(t, 125)
	n := early.shell.now()
	a, open := n.putBackTime("R41")
	if !(a.Low < a.High && a.Low > 0) || !strings.Contains(a.Source, "table") {
		t.Errorf("before anything is in: %+v", a)
	}
	if len(open) != 1 || open[0] != "spring punch" {
		t.Errorf("searches %q", open)
	}
	if got := n.roughly("R41", false); !strings.Contains(got, " to ") || !strings.HasSuffix(got, "min + 1 open search") {
		t.Errorf("the header says %q", got)
	}
	late := atRig(t, 153)
	n = late.shell.now()
	a, open = n.putBackTime("R41")
	if !strings.Contains(a.Source, "own pace tonight") {
		t.Errorf("after the put-back of an hour: %+v", a)
	}
	if len(open) == 0 || !strings.Contains(a.Text, "spring punch") || !strings.Contains(a.Text, "open search") {
		t.Errorf("searches %q in %q", open, a.Text)
	}
}

func TestOtherWorkSaysHowTheTimeLeftWasGot(t *testing.T) {
	r := atRig(t, 153)
	r.touch("act other", "act time")
	got := r.text("read-back")
	for _, want := range []string{"own pace tonight", "Formula:", "Limits:", "nobody knows how long a search takes", "6 people"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q does not say %q", got, want)
		}
	}
	r.inEachLook(func() { r.noCuts("how long still", 153) })
	r.touch("piece R41-133")
	if got := r.text("header"); !strings.HasPrefix(got, "Look for it") {
		t.Errorf("an open search leads to %q", got)
	}
}

func TestWithMorePeopleThePutBackTakesLess(t *testing.T) {
	r := atRig(t, 125)
	n := r.shell.now()
	work, _ := clearup.Left(n.s, "R41")
	before, _ := n.putBackTime("R41")
	r.shell.Go(ScreenSettings)
	for _, id := range []string{"act limits", "act limit-sums", "act limit-warn"} {
		r.touch(id)
	}
	if _, ok := r.find(parts.KindAct, "warn-crew"); !ok {
		n.sumSettings().crew = 12 // below the fold of the list
	} else {
		r.touch("act warn-crew", "digit 1", "digit 2", "digit done")
	}
	after, _ := r.shell.now().putBackTime("R41")
	if want := clearup.Minutes(work, 12); after.Value != want || after.Value >= before.Value {
		t.Errorf("%v min with twelve, want %v; %v before", after.Value, want, before.Value)
	}
}

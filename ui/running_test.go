package ui

import (
	"strings"
	"testing"
	"time"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// worked_sums: a D cylinder at 1950 psi and 15 L/min has 18.7 min to 200 psi.
func TestGlanceSaysTheMinutesOfACylinderByTableAfterOneReading(t *testing.T) {
	w := demoAt(t, 22, ScreenGlance, glass1280, look.Options{})
	v := w.shell.now().glance(9)
	want := gaugeView{Item: "R41-105", Name: "Oxygen D, in case", Place: "V2", Work: true, Figure: "1950", Unit: "psi", At: "19:11, 1 min ago", Timed: true, Left: 17, Till: "19:29", By: "by table"}
	if len(v.Gauges) == 0 || v.Gauges[0] != want {
		t.Fatalf("first gauge %+v, want %+v", v.Gauges, want)
	}
}

// From 1950 psi at 19:11 to 600 psi at 19:31 are 67.5 psi a minute: 5.9 min to
// 200 psi, where the table says 4.3.
func TestASecondReadingReplacesTheTableByTheRateOfTheGauge(t *testing.T) {
	w := demoAt(t, 41, ScreenGlance, glass1280, look.Options{})
	v := w.shell.now().glance(9)
	want := gaugeView{Item: "R41-105", Name: "Oxygen D, in case", Place: "V2", Work: true, Figure: "600", Unit: "psi", At: "19:31, just now", Low: true, Under: "under 1150 psi",
		Timed: true, Left: 5, Till: "19:36", By: "by 2 readings"}
	if len(v.Gauges) == 0 || v.Gauges[0] != want {
		t.Fatalf("first gauge %+v, want %+v", v.Gauges, want)
	}
	if want := "Oxygen D, in case at V2: 5 min left. 600 psi at 19:31, just now"; v.Alert.Text != want || !v.Alert.Loud {
		t.Errorf("alert %+v, want %q", v.Alert, want)
	}
}

func TestTheMinutesRunOnWhileAPieceIsAtWork(t *testing.T) {
	w := demoAt(t, 41, ScreenGlance, glass1280, look.Options{})
	for _, c := range []struct {
		after time.Duration
		left  int
	}{{0, 5}, {2 * time.Minute, 3}, {5 * time.Minute, 0}, {time.Hour, 0}} {
		w.now = sceneStart.Add(41*time.Minute + c.after)
		if g := w.shell.now().glance(9).Gauges[0]; g.Left != c.left || !g.Low {
			t.Errorf("%v after the reading: %+v, want %d min", c.after, g, c.left)
		}
	}
}

func TestWhatNobodyHasReadSaysNoReadingAndNoNumber(t *testing.T) {
	// Minute 60: the spare was fitted at 19:32 and nobody has read it.
	w := demoAt(t, 60, ScreenGlance, glass1280, look.Options{})
	v := w.shell.now().glance(9)
	want := gaugeView{Item: "R41-111", Name: "Oxygen D, spare", Place: "V2", Work: true, At: "19:32, 18 min ago"}
	if len(v.Gauges) == 0 || v.Gauges[0] != want {
		t.Errorf("first gauge %+v, want %+v", v.Gauges, want)
	}
	if p, _ := w.find(parts.KindAct, "gauges"); !strings.HasPrefix(p.Text, "Oxygen D, spare, V2: no reading") {
		t.Errorf("the panel reads %q", p.Text)
	}
}

func TestATouchOnTheFiguresSaysFormulaSourceAndLimits(t *testing.T) {
	w := demoAt(t, 41, ScreenGlance, glass1280, look.Options{})
	w.tap(parts.KindAct, "gauges")
	how := w.text("how")
	for _, want := range []string{"5 min by the readings (5 to 6 min)", "Formula:", "psi lost a minute between the last two readings", "Source:", "your own readings", "Limits:", "not medical advice", "with 10 min left or less"} {
		if !strings.Contains(how, want) {
			t.Errorf("how it was got says %q, without %q", how, want)
		}
	}
	w.inEachLook(func() { w.noCuts("running down", 41) })
}

func TestAReadingIsTypedWithItsFlowAndNothingIsMoved(t *testing.T) {
	w := demoAt(t, 60, ScreenGlance, glass1280, look.Options{})
	w.tap(parts.KindAct, "gauges")
	before := w.countAt("R41-111", "at:V2")
	w.tap(parts.KindAct, "read")
	for _, d := range "11500" {
		w.tap(parts.KindDigit, string(d))
	}
	w.textHas("verdict", "11500 psi is more than a D cylinder holds; did you mean 1150?")
	if p, _ := w.find(parts.KindDigit, "done"); p.State != "off" {
		t.Error("what cannot be may be given as an answer")
	}
	w.noCuts("a reading that cannot be", 60)
	w.tap(parts.KindDigit, "delete")
	w.textHas("verdict", "It can be")
	w.tap(parts.KindDigit, "done")
	w.tap(parts.KindAct, "flow-15")
	if e := w.last(); e.Verb != model.CheckIt || e.Reading != "oxygen=1150;flow=15" || e.Item != "R41-111" || !e.Taken() {
		t.Errorf("logged %+v", e)
	}
	if got := w.countAt("R41-111", "at:V2"); got != before {
		t.Errorf("%d at V2 after a reading, %d before", got, before)
	}
	// (1150-200) x 0.16 / 15 = 10.1 min
	if got := w.text("how"); !strings.Contains(got, "10 min by table") {
		t.Errorf("after the reading: %q", got)
	}
}

func TestATypedPressureIsKeptHoweverTheFlowIsLeft(t *testing.T) {
	for name, away := range map[string]func(w *window){
		"another screen": func(w *window) { w.tap("screen", ScreenTarp) },
		"back":           func(w *window) { w.tap(parts.KindAct, "back") },
		"another piece":  nil, // chosen below
		"not known":      func(w *window) { w.tap(parts.KindAct, "no-flow") },
	} {
		w := demoAt(t, 60, ScreenGlance, glass1280, look.Options{})
		w.tap(parts.KindAct, "gauges")
		if name == "another piece" {
			other := ""
			for _, p := range w.parts {
				if p.Kind == parts.KindPiece && p.ID != "R41-111" {
					other = p.ID
					break
				}
			}
			away = func(w *window) { w.tap(parts.KindPiece, other) }
		}
		w.tap(parts.KindAct, "read")
		for _, d := range "900" {
			w.tap(parts.KindDigit, string(d))
		}
		w.tap(parts.KindDigit, "done")
		away(w)
		if e := w.last(); e.Verb != model.CheckIt || e.Reading != "oxygen=900" || e.Item != "R41-111" {
			t.Errorf("%s: the last entry is %s %q of %s", name, e.Verb, e.Reading, e.Item)
		}
	}
}

func TestAPressureIsDroppedOnlyByTheKeyThatSaysSo(t *testing.T) {
	w := demoAt(t, 60, ScreenGlance, glass1280, look.Options{})
	before := w.last().ID
	w.tap(parts.KindAct, "gauges")
	w.tap(parts.KindAct, "read")
	w.tap(parts.KindDigit, "9")
	w.tap(parts.KindDigit, "done")
	w.tap(parts.KindAct, "later")
	w.tap("screen", ScreenTarp)
	if e := w.last(); e.ID != before {
		t.Errorf("logged %s %q", e.Verb, e.Reading)
	}
}

func TestAPieceThatIsOutLongIsOneLineAndCanBeSaidToBeInOrder(t *testing.T) {
	w := demoAt(t, 60, ScreenGlance, glass1280, look.Options{})
	n := w.shell.now()
	all := n.longs(n.figures())
	if len(all) == 0 {
		t.Fatal("after an hour nothing is out long")
	}
	for _, o := range all {
		if o.Minutes < o.Limit {
			t.Errorf("%s is out %v min and its limit is %v", n.d.Items[o.Line].ID, o.Minutes, o.Limit)
		}
	}
	long := 0
	for _, a := range n.alerts(n.figures()) {
		if strings.HasPrefix(a.Text, "Out long") {
			long++
			if a.Loud {
				t.Error("a piece that is out long is no alarm")
			}
		}
	}
	if long != 1 {
		t.Errorf("%d lines say that pieces are out long", long)
	}
	w.tap(parts.KindAct, "gauges")
	item := ""
	for _, o := range all { // one that is on screen without scrolling
		if _, ok := w.find(parts.KindPiece, n.d.Items[o.Line].ID); ok && item == "" {
			item = n.d.Items[o.Line].ID
		}
	}
	w.tap(parts.KindPiece, item)
	w.tap(parts.KindAct, "wave")
	w.tap(parts.KindAct, "why-seen")
	n = w.shell.now()
	for _, o := range n.longs(n.figures()) {
		if n.d.Items[o.Line].ID == item {
			t.Errorf("%s is still told of", item)
		}
	}
	w.now = w.now.Add((snoozeMinutes + 1) * time.Minute)
	n = w.shell.now()
	if got := n.longs(n.figures()); len(got) == 0 || len(got) < len(all) {
		t.Errorf("after %d minutes %d are told of, %d before", snoozeMinutes, len(got), len(all))
	}
}

func TestTheMinutesAtWhichToWarnAreSetByAnOfficerInSettings(t *testing.T) {
	w := demoAt(t, 22, ScreenSettings, glass1280, look.Options{})
	if f := w.shell.now().figures()[0]; f.Warn {
		t.Fatalf("with 16 minutes left it warns: %+v", f)
	}
	w.tap(parts.KindAct, "limits")
	w.tap(parts.KindAct, "limit-sums")
	w.tap(parts.KindAct, "limit-warn")
	w.tap(parts.KindAct, "warn-oxygen")
	w.tap(parts.KindDigit, "2")
	w.tap(parts.KindDigit, "0")
	w.tap(parts.KindDigit, "done")
	if f := w.shell.now().figures()[0]; !f.Warn {
		t.Errorf("with 16 minutes left and a limit of 20 it is quiet: %+v", f)
	}
	if p, _ := w.find(parts.KindAct, "warn-oxygen"); !strings.Contains(p.Text, "20 min left") || !strings.Contains(p.Text, "from memory") {
		t.Errorf("the row reads %q", p.Text)
	}
}

func TestSettingsOfTheSumsAreWholeAtEverySize(t *testing.T) {
	for _, group := range []string{groupWarn, groupLong, groupFull, groupChance} {
		w := demoAt(t, 22, ScreenSettings, glass1280, look.Options{})
		w.tap(parts.KindAct, "limits")
		w.tap(parts.KindAct, "limit-sums")
		w.tap(parts.KindAct, "limit-"+group)
		w.inEachLook(func() { w.noCuts("limits, "+group, 22) })
	}
}

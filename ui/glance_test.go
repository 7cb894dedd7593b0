package ui

import (
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// Every screen of the demo is read at these minutes: nothing out, in the
// middle of the work, a rig called away, clear-up, the end.
var demoMinutes = []int{-1, 0, 60, 91, 126, 158, 177}

// noCuts fails if any text on screen was cut.
func (w *window) noCuts(what string, minute int) {
	w.t.Helper()
	if cut := parts.Cuts(w.shell.Root()); len(cut) > 0 {
		w.t.Errorf("%s at minute %d, %v: cut %q", what, minute, w.shell.root.Size(), cut)
	}
}

// inEachLook shows the same scene at three sizes, by day and by night.
func (w *window) inEachLook(check func()) {
	w.t.Helper()
	for _, size := range []fyne.Size{glass1280, glass1024, glass1920} {
		for _, day := range []bool{false, true} {
			fyne.CurrentApp().Settings().SetTheme(look.New(LookFor(size, day)))
			w.win.Resize(size)
			relay(w.shell.root)
			w.shell.Refresh()
			check()
		}
	}
}

func TestGlanceCutsNoTextAtAnySizeByDayOrNight(t *testing.T) {
	for _, minute := range demoMinutes {
		w := demoAt(t, minute, ScreenGlance, glass1280, look.Options{})
		w.inEachLook(func() { w.noCuts("glance", minute) })
	}
}

func TestReadAloudCutsNoTextOnAnyPage(t *testing.T) {
	for _, minute := range []int{60, 177} {
		w := demoAt(t, minute, ScreenGlance, glass1280, look.Options{})
		w.inEachLook(func() {
			w.shell.Go(ScreenGlance)
			w.tap(parts.KindAct, "read-aloud")
			for {
				w.noCuts("read aloud", minute)
				if next, _ := w.find(parts.KindAct, "page-on"); next.State == "off" {
					return
				}
				w.tap(parts.KindAct, "page-on")
			}
		})
	}
}

// The lines by place are those of the demo's table of the staging hand-over.
func TestGlanceCountsTheLinesOfEachPlaceAtTheHandOverOfStaging(t *testing.T) {
	w := demoAt(t, 60, ScreenGlance, glass1280, look.Options{})
	v := w.shell.now().glance(9)
	var got []string
	for _, b := range v.Bands {
		got = append(got, b.Name+" "+words.N("%d line", "%d lines", b.Lines))
		lines := 0
		for _, n := range b.Names {
			lines += n.Lines
		}
		if lines != b.Lines {
			t.Errorf("%s says %d lines and names %d", b.Name, b.Lines, lines)
		}
	}
	want := []string{"V2 21 lines", "Bank 10 lines", "V1 8 lines", "Road 2 lines", "Tarp 18 lines"}
	if !slices.Equal(got, want) {
		t.Errorf("bands %q, want %q", got, want)
	}
	if v.Sentence != "Last entry under a minute ago, 19:50" {
		t.Errorf("the age of the data reads %q", v.Sentence)
	}
	if text := w.text("at:V2"); !strings.Contains(text, "battery cutter") || !strings.Contains(text, "oxygen case with Medic 9") {
		t.Errorf("the band of V2 reads %q", text)
	}
}

// alert is what the line of Glance says, "" where there is none.
func (w *window) alert() string {
	p, _ := w.find(parts.KindAct, "alert")
	return p.Text
}

func TestGlanceSaysInWordsThatItsDataIsOld(t *testing.T) {
	w := demoAt(t, 60, ScreenGlance, glass1280, look.Options{})
	w.now = w.now.Add(5 * time.Minute)
	w.shell.Refresh()
	if got := w.text("header"); !strings.Contains(got, "Last entry 5 min ago, 19:50") {
		t.Errorf("at five minutes: %q", got)
	}
	w.now = w.now.Add(2 * time.Minute)
	w.shell.Refresh()
	if got := w.text("header"); !strings.Contains(got, "Data is 7 min old. Last entry 19:50") {
		t.Errorf("at seven minutes: %q", got)
	}
	if got := w.alert(); !strings.Contains(got, "Data is 7 min old") {
		t.Errorf("alert at seven minutes: %q", got)
	}
}

// Free is ready in its slot, or on the tarp untagged and with no open check.
func TestFreeCountsWhatLiesOnTheTarpButNothingTaggedOrLow(t *testing.T) {
	w := demoAt(t, 60, ScreenGlance, glass1280, look.Options{})
	n := w.shell.now()
	for _, c := range []struct {
		family string
		want   int
		onTarp bool
	}{
		{"spreader", 1, true},     // on the tarp; P71's is at V2
		{"cutter", 1, false},      // R41's is at V2; P71's at home
		{"toolbattery", 6, false}, // of 7: 5 at V2, 2 on the tarp with 22 %; E42's two at home
		{"litter", 0, false},      // at the bank; Support 44 is not here
		{"crib4", 42, false},      // 20 + 4 of R41, 10 of E42, 8 of P71
	} {
		var lines []int
		for i := range n.d.Items {
			if n.d.Items[i].Family == c.family {
				lines = append(lines, i)
			}
		}
		if f := n.freeOf(c.family, lines); f.Count != c.want || f.OnTarp != c.onTarp {
			t.Errorf("%s: %d free, all on the tarp %v; want %d, %v", c.family, f.Count, f.OnTarp, c.want, c.onTarp)
		}
	}
}

// readiness_end.csv of the demo, in words.
func TestIfSentNowSaysWhatRescue41CouldNotDoAtTheEnd(t *testing.T) {
	w := demoAt(t, 177, ScreenGlance, glass1280, look.Options{})
	v := w.shell.now().sent("R41")
	if want := []string{"head block set", "oxygen D", "staging tarp"}; !slices.Equal(slices.Sorted(slices.Values(v.None)), want) {
		t.Errorf("none of %q, want %q", v.None, want)
	}
	if want := []string{"1 of 2 life-safety ropes"}; !slices.Equal(v.Few, want) {
		t.Errorf("too few %q, want %q", v.Few, want)
	}
	if len(v.Short) != 5 {
		t.Errorf("short but usable %q, want five families", v.Short)
	}
	if text := v.words(2, noWhy); !strings.Contains(text, "2 more.") {
		t.Errorf("with two names: %q", text)
	}
}

func TestAlertIsOneLineTheWorstFirst(t *testing.T) {
	w := demoAt(t, 34, ScreenGlance, glass1280, look.Options{})
	if got, want := w.alert(), "Area light 2: V2 or V1? Go and look"; !strings.HasPrefix(got, want) {
		t.Errorf("two claims: %q, want %q first", got, want)
	}
	w = demoAt(t, 158, ScreenGlance, glass1280, look.Options{})
	if got := w.alert(); !strings.HasPrefix(got, "1 unexplained: spring punch, Rescue 41") || !strings.Contains(got, "more") {
		t.Errorf("at the count of the blocks: %q", got)
	}
}

func TestNothingOnGlanceChangesStock(t *testing.T) {
	w := demoAt(t, 60, ScreenGlance, glass1280, look.Options{})
	before := w.board.Picture().Gen
	for _, p := range slices.Clone(w.parts) {
		if p.Kind == parts.KindScreen {
			continue
		}
		w.shell.Go(ScreenGlance)
		if _, ok := w.find(p.Kind, p.ID); ok {
			w.tap(p.Kind, p.ID)
		}
	}
	if w.board.Picture().Gen != before {
		t.Error("a touch on Glance logged an entry")
	}
}

func TestReadAloudGoesPlaceByPlaceAndBack(t *testing.T) {
	w := demoAt(t, 60, ScreenGlance, glass1280, look.Options{})
	w.tap(parts.KindAct, "read-aloud")
	if got := w.text("page"); !strings.HasPrefix(got, "V2. 21 lines. Battery cutter") {
		t.Errorf("first page %q", got)
	}
	all := w.text("page")
	for next, _ := w.find(parts.KindAct, "page-on"); next.State != "off"; next, _ = w.find(parts.KindAct, "page-on") {
		w.tap(parts.KindAct, "page-on")
		all += w.text("page")
	}
	for _, want := range []string{"Bank. 10 lines", "Tarp. 18 lines", "Chain saw 16 in tagged", "If sent now"} {
		if !strings.Contains(all, want) {
			t.Errorf("nowhere on the pages: %q", want)
		}
	}
	w.tap(parts.KindAct, "back")
	if _, ok := w.find(parts.KindAct, "rig-leaving"); !ok {
		t.Error("Back does not lead to Glance")
	}
}

func TestAPageThatGoesOnSaysItsHeadingAgain(t *testing.T) {
	demoAt(t, 60, ScreenGlance, glass1280, glassLook(glass1280, 1))
	lines := []aloudLine{{Text: "Medic 9", Strong: true}}
	for range 40 {
		lines = append(lines, aloudLine{Text: "a piece"})
	}
	s := aloudPage{Title: "Rescue 41", Lines: append(lines, aloudLine{Text: "Lost", Strong: true}, aloudLine{Text: "punch"})}
	for _, size := range []fyne.Size{{Width: 900, Height: 430}, {Width: 1160, Height: 520}, {Width: 1780, Height: 860}} {
		said := 0
		for _, p := range s.onPages(size) {
			for _, col := range p.Cols {
				if !col[0].Strong || col[len(col)-1].Strong {
					t.Errorf("%v: a column begins or ends in the middle: %+v", size, col)
				}
				for _, l := range col {
					if !l.Strong {
						said++
					}
				}
			}
		}
		if said != 41 {
			t.Errorf("%v: %d lines are said, want 41", size, said)
		}
	}
}

func TestWhatIsReadAloudOfAPlaceStandsOnOnePageOfALargeGlass(t *testing.T) {
	w := demoAt(t, 60, ScreenGlance, glass1920, glassLook(glass1920, 1))
	w.tap(parts.KindAct, "read-aloud")
	if got := w.text("page"); !strings.Contains(got, "Battery cutter") || !strings.Contains(got, "fleece blankets") {
		t.Errorf("not all of V2 is on the first page: %q", got)
	}
}

func TestAnEmptySceneSaysThatNothingIsOut(t *testing.T) {
	w := demoAt(t, 0, ScreenGlance, glass1280, look.Options{})
	if got := w.text("nothing-out"); !strings.HasPrefix(got, "Nothing is out. Every piece is in its slot") {
		t.Errorf("at minute 0: %q", got)
	}
	w = demoAt(t, 177, ScreenGlance, glass1280, look.Options{})
	if got := w.text("nothing-out"); strings.Contains(got, "Every piece is in its slot") {
		t.Errorf("at minute 177 pieces are with others, and the screen says %q", got)
	}
	if got := w.text("elsewhere"); !strings.Contains(got, "4 with Medic 9") {
		t.Errorf("what is with others: %q", got)
	}
}

// A scene may have more places than the page has height for.
func TestPlacesWithoutRoomAreStillCounted(t *testing.T) {
	w := demoAt(t, 60, ScreenGlance, glass1024, look.Options{})
	for _, place := range []string{"V3", "SIDE A", "SIDE B", "REHAB", "DECON"} {
		w.shell.log(board.Tap{Acts: []model.Act{{Verb: model.MoveTo, Item: "R41-056", Quantity: 1, From: "at:V2", To: "at:" + place}}})
	}
	if got := w.text("elsewhere"); !strings.Contains(got, "Also ") || !strings.Contains(got, "1 line.") {
		t.Errorf("ten places on a small glass, and the page counts only %q", got)
	}
	w.noCuts("ten places", 60)
}

func TestAnEqualGlanceIsNotMadeAnew(t *testing.T) {
	w := demoAt(t, 60, ScreenGlance, glass1280, look.Options{})
	g := w.shell.screens[ScreenGlance].(*glanceScreen)
	before := slices.Clone(g.root.Objects)
	part := g.free.part
	w.shell.Refresh()
	if !slices.Equal(before, g.root.Objects) || g.free.part != part {
		t.Error("a refresh without news changed what is drawn")
	}
	w.shell.log(board.Tap{Acts: []model.Act{{Verb: model.Return, Item: "R41-002", Quantity: 1, From: "at:V2", To: "tarp"}}})
	if got := w.text("at:V2"); strings.Contains(got, "battery cutter") {
		t.Errorf("the cutter is back on the tarp, and V2 reads %q", got)
	}
}

func TestIfSentNowSaysThatAGaugeWasNotRead(t *testing.T) {
	w := demoAt(t, 8, ScreenGlance, glass1280, look.Options{})
	const kit = "R41-104" // the oxygen case
	for _, a := range []model.Act{
		{Verb: model.Direct, From: "home", To: "at:V1"},
		{Verb: model.Return, From: "at:V1", To: "tarp"},
		{Verb: model.Stow, Reading: "count=yes;in_anyway", From: "tarp", To: "home"},
	} {
		a.Item, a.Quantity = kit, 1
		for _, e := range w.shell.log(board.Tap{Acts: []model.Act{a}}) {
			if !e.Taken() {
				t.Fatalf("%s: %+v", a.Verb, e.Reply)
			}
		}
	}
	want := "1 of 2 oxygen Ds (1 gauge not read)"
	v := w.shell.now().sent("R41")
	if got := v.whole(); !strings.Contains(got, want) {
		t.Errorf("the whole view is %q", got)
	}
	if got := v.words(v.count(), noWhy); strings.Contains(got, "gauge") || !strings.Contains(got, "1 of 2 oxygen Ds") {
		t.Errorf("without reasons it is %q", got)
	}
	if got := v.words(v.count(), shortWhy); !strings.Contains(got, "1 of 2 oxygen Ds (1 unread)") {
		t.Errorf("the shorter form is %q", got)
	}
	w.shell.Go(ScreenLeaving)
	if got := w.text("if-sent-now"); !strings.Contains(got, want) {
		t.Errorf("Leaving says %q", got)
	}
	w.shell.log(board.Tap{Acts: []model.Act{{Verb: model.CheckIt, Item: "R41-105", Quantity: 1, Reading: "oxygen=1800"}}})
	if got := w.text("if-sent-now"); strings.Contains(got, "gauge") || strings.Contains(got, "oxygen") {
		t.Errorf("once it was read Leaving says %q", got)
	}
}

func TestWhileNothingIsOutGlanceNamesEveryFamilyThatCanBeAskedFor(t *testing.T) {
	for _, minute := range []int{-1, 8} {
		w := demoAt(t, minute, ScreenGlance, glass1920, glassLook(glass1920, 1))
		g := w.shell.screens[ScreenGlance].(*glanceScreen)
		if len(g.none.view.Free) < 20 {
			t.Errorf("minute %d: %d families above the foot", minute, len(g.none.view.Free))
		}
		for _, f := range w.shell.now().free(1000) {
			if f.Name == "" {
				t.Errorf("minute %d: the family %s has no name", minute, f.Family)
			}
		}
	}
}

func TestTheTarpTakesNoRowFromAKeyPieceAtWork(t *testing.T) {
	names := func(n int) (out []bandName) {
		for i := range n {
			out = append(out, bandName{Name: "Tool " + string(rune('a'+i%26)), Lines: 1, Key: true})
		}
		return out
	}
	demoAt(t, 60, ScreenGlance, glass1280, glassLook(glass1280, 1))
	bands := []bandView{{Place: "at:V2", Lines: 9, Names: names(9)}, {Place: "tarp", Lines: 400, Names: names(400)}}
	draws, _ := shareRows(bands, 700, 240)
	if draws[0].hidden > 0 || draws[1].Rows > draws[0].Rows {
		t.Errorf("%d rows at the place with %d hidden, %d on the tarp", draws[0].Rows, draws[0].hidden, draws[1].Rows)
	}
}

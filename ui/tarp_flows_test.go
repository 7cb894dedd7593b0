package ui

import (
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func (w *window) entries() int { return len(w.board.Picture().Entries) }

// write touches the letters of words on the pad.
func (w *window) write(words string) {
	w.t.Helper()
	for _, r := range strings.ToLower(words) {
		id := string(r)
		if r == ' ' {
			id = "space"
		}
		w.tap("act", id)
	}
}

func TestATouchOnAContestedPieceNamesBothClaimsAndAKeySettlesIt(t *testing.T) {
	w := demoAt(t, 36, ScreenTarp, glass1280, look.Options{})
	w.shell.by = "M02"
	w.tap("place", "at:V2")
	w.tap("piece", "R41-070")
	if p, _ := w.find("piece", "R41-070"); p.State == "picked" {
		t.Fatal("the contested piece was picked before anybody was asked")
	}
	if got := w.text("reply"); !strings.Contains(got, "V2 or V1?") || !strings.Contains(got, "Askew") || !strings.Contains(got, "Krantz") {
		t.Errorf("the strip says %q, want both claims and who made them", got)
	}
	w.tap("act", "settle-at:V1")
	e := w.newest()
	if e.Verb != model.Settle || e.To != "at:V1" || e.Quantity != 1 || e.Holder != "M04" || e.By != "M02" {
		t.Errorf("logged %s of %d to %s, holder %s, by %s", e.Verb, e.Quantity, e.To, e.Holder, e.By)
	}
	if l := w.board.Picture().State.LineOf("R41-070"); l.Contest != nil || w.countAt("R41-070", "at:V1") != 1 {
		t.Errorf("it is still contested, or not at V1: %+v", l.Stacks)
	}
}

func TestAContestedPieceCanStillBePickedBySecondTouch(t *testing.T) {
	w := demoAt(t, 36, ScreenTarp, glass1280, look.Options{})
	w.tap("place", "at:V2")
	w.tap("piece", "R41-070")
	w.tap("piece", "R41-070")
	if p, _ := w.find("piece", "R41-070"); p.State != "picked" {
		t.Errorf("after two touches it is %q", p.State)
	}
}

func TestWhenTwoLogsMeetTheTarpAsksWhichClaimIsTrue(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	copied := filepath.Join(t.TempDir(), "other.db")
	if err := w.board.Backup(copied); err != nil {
		t.Fatal(err)
	}
	other, err := board.Open(copied, board.Options{Now: func() time.Time { return w.now }, Random: rand.NewChaCha8([32]byte{2}), Device: "B"})
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	w.tap("piece", "R41-001")
	w.tap("place", "at:V1")
	theirs, err := other.Log(board.Tap{Acts: []model.Act{{Verb: model.Hand, Item: "R41-001", Quantity: 1, From: "tarp", To: "at:BANK", By: "M03"}}})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := w.board.Add(theirs); err != nil {
		t.Fatal(err)
	}
	w.tap("screen", ScreenTarp)
	if got := w.text("reply"); !strings.Contains(got, "Battery spreader") || !strings.Contains(got, "Bank") || !strings.Contains(got, "V1") {
		t.Fatalf("the strip says %q", got)
	}
	w.tap("act", "settle-at:V1")
	if w.countAt("R41-001", "at:V1") != 1 || w.board.Picture().State.LineOf("R41-001").Contest != nil {
		t.Errorf("not settled at V1: %s", w.text("reply"))
	}
}

func TestAfterAHandOverWhatGoesWithABoardIsOneTouchEach(t *testing.T) {
	w := demoAt(t, 81, ScreenTarp, glass1920, look.Options{})
	w.tap("place", "at:V2")
	w.tap("piece", "R41-052") // long backboard
	w.tap("place", "with:MED9")
	if got := w.text("asked"); !strings.Contains(got, "Goes along?") {
		t.Fatalf("the row says %q", got)
	}
	w.tap("piece", "R41-054@at:V2") // straps, handed out in the same touch
	if e := w.newest(); e.Verb != model.Handover || e.To != "with:MED9" || e.Quantity != 1 {
		t.Errorf("logged %s to %s", e.Verb, e.To)
	}
	if _, ok := w.find("piece", "R41-054@at:V2"); ok {
		t.Error("the straps are offered again")
	}
	n := w.shell.now()
	var names []string
	for _, v := range n.alongTiles(&along{item: "R41-052", from: model.Place{Kind: model.At, Name: "V2"}, to: model.Place{Kind: model.With, Name: "MED9"}}, nil) {
		names = append(names, v.ID)
	}
	all := strings.Join(names, " ")
	for _, want := range []string{"R41-138@at:V2", "R41-133@home", "R41-130@at:V2"} { // blanket held by Medic 9, head blocks on the rig, collar bag
		if !strings.Contains(all, want) {
			t.Errorf("%s is not offered: %s", want, all)
		}
	}
	if strings.Contains(all, "R41-053") || strings.Contains(all, "R41-144") {
		t.Errorf("the other board or a saw is offered: %s", all)
	}
}

func TestAnyOtherTouchLetsWhatMightGoAlongGo(t *testing.T) {
	w := demoAt(t, 81, ScreenTarp, glass1280, look.Options{})
	w.tap("place", "at:V2")
	w.tap("piece", "R41-052")
	w.tap("place", "with:MED9")
	before := w.entries()
	w.tap("place", "at:V1")
	if got := w.text("asked"); !strings.HasPrefix(parts.Plain(got), "Asked next") {
		t.Errorf("the row says %q", got)
	}
	if w.entries() != before {
		t.Error("something was logged")
	}
}

func TestABatteryGoesWithTheToolThatItCameWith(t *testing.T) {
	w := demoAt(t, 30, ScreenTarp, glass1280, look.Options{})
	w.tap("place", "at:V1")
	w.tap("piece", "R41-001") // handed out with tool battery 1 in one touch
	w.tap("place", "at:V2")
	w.tap("piece", "R41-005@at:V1")
	if w.countAt("R41-005", "at:V2") != 1 {
		t.Errorf("the battery is not at V2: %s", w.text("reply"))
	}
}

func TestAPlaceKeepsItsCrewUntilAnotherIsNamed(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-001")
	w.tap("act", "holder")
	w.tap("rig", "E42")
	w.tap("place", "at:ROAD")
	if e := w.newest(); e.Holder != "E42" {
		t.Errorf("held by %q, want E42", e.Holder)
	}
	if got := parts.Plain(w.text("last")); !strings.Contains(got, "Engine 42 crew") {
		t.Errorf("the strip says %q", got)
	}
	w.tap("piece", "R41-063") // the next one goes to the same crew without a word
	w.tap("place", "at:ROAD")
	if e := w.newest(); e.Holder != "E42" {
		t.Errorf("held by %q, want E42", e.Holder)
	}
	w.tap("piece", "R41-052")
	w.tap("act", "holder")
	w.tap("member", nobody)
	w.tap("place", "at:ROAD")
	if e := w.newest(); e.Holder != "" {
		t.Errorf("held by %q, want nobody", e.Holder)
	}
	w.tap("piece", "R41-054")
	w.tap("place", "with:MED9")
	if e := w.newest(); e.Verb != model.Handover || e.Holder != "" {
		t.Errorf("%s with holder %q, want none", e.Verb, e.Holder)
	}
}

func TestTheLastPlaceIsTheFilledOneAndHasAKeyOfItsOwn(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-001")
	w.tap("place", "at:V2")
	w.tap("piece", "R41-052")
	if p, _ := w.find("place", "at:V2"); p.State != string(parts.PlaceLikeliest) {
		t.Errorf("V2 is %q", p.State)
	}
	if p, _ := w.find("act", "again"); p.Text != "To V2, again" {
		t.Errorf("the key says %q", p.Text)
	}
	w.tap("act", "again")
	if w.countAt("R41-052", "at:V2") != 1 {
		t.Error("the board did not go to V2")
	}
	w.tap("place", "at:V2")
	w.tap("piece", "R41-001")
	if p, _ := w.find("place", "tarp"); p.State != string(parts.PlaceLikeliest) {
		t.Errorf("for a piece at V2 the tarp is %q", p.State)
	}
}

func TestAWholeListIsStagedAtOnceButForWhatIsUnticked(t *testing.T) {
	w := demoAt(t, 9, ScreenTarp, glass1280, look.Options{})
	w.tap("act", "pull-list")
	before := w.entries()
	w.tap("act", "list-Machinery entrapment")
	w.tap("act", "line-R41-168") // the tool box stays
	if w.entries() != before {
		t.Fatal("the list was logged by itself")
	}
	w.tap("act", "stage-list")
	all := w.board.Picture().Entries[before:]
	for _, e := range all {
		if e.Verb != model.PullOff || e.Tap != all[0].Tap || e.Item == "R41-168" || !e.Taken() {
			t.Errorf("%s %s %s", e.Verb, e.Item, e.Reply.Text)
		}
	}
	if len(all) < 10 || w.countAt("R41-058", "tarp") != 20 || w.countAt("R41-168", "home") != 1 {
		t.Errorf("%d lines staged, %d blocks of 20", len(all), w.countAt("R41-058", "tarp"))
	}
	if got := w.text("asked"); !strings.Contains(got, "machinery entrapment") {
		t.Errorf("the list that was chosen is not kept: %q", got)
	}
	w.tap("act", "undo")
	if w.countAt("R41-058", "tarp") != 0 {
		t.Error("one undo did not take the list back")
	}
}

func TestALineThatDependsOnTheSeasonIsTickedOnlyWhereThatHolds(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1920, LookFor(glass1920, true))
	w.tap("act", "pull-list")
	w.tap("act", "list-Trail carry-out")
	p, _ := w.find("act", "line-R41-087")
	if p.State == "ticked" {
		t.Fatal("a rope is ticked before anybody said that there is a slope")
	}
	w.tap("act", "if-any slope that needs a rope")
	if p, ok := w.find("act", "line-R41-088"); !ok || p.State != "ticked" {
		t.Errorf("with a slope the second rope is %q", p.State)
	}
}

func TestAFingerThatTouchesTwiceIsAskedBeforeTheSameIsLoggedAgain(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-056")
	w.tap("quantity", "1")
	w.tap("place", "at:V1")
	before := w.entries()
	w.again("place", "at:V1")
	if w.entries() != before || !strings.HasPrefix(w.text("reply"), "The same again?") {
		t.Fatalf("logged twice, or not asked: %q", w.text("reply"))
	}
	w.tap("act", "no")
	if w.entries() != before {
		t.Error("No logged it")
	}
	w.tap("piece", "R41-056")
	w.tap("quantity", "1")
	w.tap("place", "at:V1")
	w.again("place", "at:V1")
	w.tap("act", "yes")
	if w.entries() != before+2 || w.countAt("R41-056", "tarp") != 1 {
		t.Errorf("%d entries more, %d left on the tarp", w.entries()-before, w.countAt("R41-056", "tarp"))
	}
}

func TestABounceAfterTheLastPieceShowsNothingElseAndLaterItDoes(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-001")
	w.tap("place", "at:V1")
	w.again("place", "at:V1")
	if p, _ := w.find("place", "tarp"); p.State != string(parts.PlaceOpen) {
		t.Errorf("a bounce turned the panel away from the tarp: %q", p.State)
	}
	w.tap("place", "at:V1")
	if p, _ := w.find("place", "at:V1"); p.State != string(parts.PlaceOpen) {
		t.Errorf("a touch a second later shows V1 as %q", p.State)
	}
}

func TestAnUnknownPieceIsLoggedInWordsAndSettledInWords(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("act", "find")
	w.write("green hoox")
	w.tap("act", "log-unknown")
	e := w.newest()
	if e.Verb != model.PullOff || !strings.EqualFold(e.Item, "green hoox") || !e.Reply.Has("unknown_item") {
		t.Fatalf("logged %s %q %v", e.Verb, e.Item, e.Reply.Reasons)
	}
	id := unknownID + e.Item
	if p, ok := w.find("piece", id); !ok || p.State != "unknown" {
		t.Fatalf("the piece is not on the tarp: %+v", p)
	}
	w.tap("piece", id)
	w.tap("act", "done") // no words yet: nothing happens
	w.write("truck nine")
	w.tap("act", "done")
	e = w.newest()
	if e.Verb != model.Settle || !strings.EqualFold(e.Note, "truck nine") || e.Reply.Word != model.OK {
		t.Errorf("logged %s %q %s", e.Verb, e.Note, e.Reply.Word)
	}
	if _, ok := w.find("piece", id); ok {
		t.Error("it is still unknown on the tarp")
	}
}

func TestARigThatNobodyListedArrivesByItsLetters(t *testing.T) {
	w := demoAt(t, 60, ScreenMore, glass1280, look.Options{})
	w.tap("act", "arrive")
	w.tap("act", "another-rig")
	w.tap("act", "t")
	w.tap("act", "figures")
	w.tap("act", "9")
	w.tap("act", "done")
	e := w.newest()
	if e.Verb != model.Arrive || e.Rig != "T9" || !e.Reply.Has("new_rig") {
		t.Errorf("logged %s %q %v", e.Verb, e.Rig, e.Reply.Reasons)
	}
}

func TestRigsThatHaveNoTabAreOneTouchAway(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1024, look.Options{})
	for _, rig := range []string{"T9", "Tanker 12", "S44"} {
		w.shell.act(model.Act{Verb: model.Arrive, Rig: rig})
	}
	w.tap("screen", ScreenTarp)
	w.sound("six rigs")
	if p, ok := w.find("act", "rigs"); !ok || p.Text != "4 more" {
		t.Fatalf("the header has %+v", p)
	}
	w.tap("act", "rigs")
	w.sound("the list of rigs")
	w.tap("rig", "P71")
	w.tap("act", "back")
	w.tap("place", "at:V2")
	for _, p := range w.parts {
		if p.Kind == parts.KindPiece && strings.HasPrefix(p.ID, "P71") {
			t.Errorf("%s of a hidden rig is shown", p.ID)
		}
	}
}

func TestAnActCanBeSetBackInTimeAndTheNextOneIsNot(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-001")
	w.tap("act", "earlier")
	w.tap("act", "earlier")
	w.tap("act", "earlier")
	if p, _ := w.find("act", "earlier"); p.Text != "5 min, at 19:45" {
		t.Errorf("the key says %q", p.Text)
	}
	w.tap("place", "at:V1")
	e := w.newest()
	if got, want := e.At(), w.now.Add(-5*time.Minute).UnixMilli(); got != want {
		t.Errorf("logged %d ms off", got-want)
	}
	w.tap("piece", "R41-052")
	w.tap("place", "at:V1")
	e = w.newest()
	if got := e.At(); got != w.now.UnixMilli() {
		t.Error("the next act was set back as well")
	}
}

func TestNothingIsSetBackBeforeTheSceneOpened(t *testing.T) {
	w := demoAt(t, 9, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-001")
	for range 3 {
		w.tap("act", "earlier")
	}
	w.tap("act", "earlier") // ten would be before the call: back to now
	if p, _ := w.find("act", "earlier"); p.Text != "Earlier, now" {
		t.Errorf("the key says %q", p.Text)
	}
}

func TestNothingOfTheTarpFlowsIsCutAtAnySize(t *testing.T) {
	flows := map[string][]string{
		"claims":   {"36", "place at:V2", "piece R41-070"},
		"along":    {"81", "place at:V2", "piece R41-054", "place with:MED9"},
		"earlier":  {"60", "piece R41-001", "place at:V2", "piece R41-005", "act earlier", "act earlier", "act earlier", "act earlier"},
		"who":      {"60", "piece R41-001", "act holder", "member M03"},
		"list":     {"60", "act pull-list", "act list-Trail carry-out", "act stage-list"},
		"unknown":  {"60", "act find", "act z", "act q", "act log-unknown", "piece unknown:Zq"},
		"entries":  {"60", "act entries"},
		"moved on": {"36", "act undo", "act correct"},
		"other":    {"60", "place new", "act close", "place at:V1", "piece R41-001"},
	}
	for name, steps := range flows {
		for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
			var minute int
			fmt.Sscan(steps[0], &minute)
			w := demoAt(t, minute, ScreenTarp, size, LookFor(size, minute == 60))
			for _, step := range steps[1:] {
				kind, id, _ := strings.Cut(step, " ")
				if _, ok := w.find(kind, id); ok { // on a small glass it may be on another page
					w.tap(kind, id)
				}
				what := fmt.Sprintf("%s %v after %q", name, size, step)
				if len(w.shell.over) == 0 {
					w.sound(what)
					continue
				}
				for _, cut := range parts.Cuts(w.shell.Root()) { // the last row of a list may show in part: it scrolls
					t.Errorf("%s: cut: %s", what, cut)
				}
			}
		}
	}
}

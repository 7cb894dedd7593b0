package ui

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// rigside is the Load up screen at a minute of the demo, with a count of the
// touches made.
type rigside struct {
	*window
	taps int
}

func atRig(t *testing.T, minute int) *rigside {
	return &rigside{window: demoAt(t, minute, ScreenLoadUp, fyne.NewSize(1280, 800), look.Options{})}
}

// touch touches parts by "kind id", in order.
func (r *rigside) touch(ids ...string) {
	r.t.Helper()
	for _, id := range ids {
		kind, rest, _ := strings.Cut(id, " ")
		r.taps++
		r.tap(kind, rest)
	}
}

// hold holds a key until it is done.
func (r *rigside) hold(id string) {
	r.t.Helper()
	r.touch("act " + id)
	r.shell.Refresh()
	r.touch("act " + id + "-sure")
}

// at is how many pieces of a line are at a place.
func (r *rigside) at(item, place string) int {
	r.t.Helper()
	s := r.board.Picture().State
	i := s.Dept.ItemIndex(item)
	p, err := s.Resolve(place, i, r.board.Picture().Scene)
	if err != nil {
		r.t.Fatal(err)
	}
	return s.Line(i).N(p)
}

func (r *rigside) want(item, place string, n int) {
	r.t.Helper()
	if got := r.at(item, place); got != n {
		r.t.Fatalf("%s at %s: %d, want %d", item, place, got, n)
	}
}

// last is the newest entry.
func (r *rigside) last() model.Entry {
	all := r.board.Picture().Entries
	return all[len(all)-1]
}

func (r *rigside) says(id, words string) {
	r.t.Helper()
	if got := r.text(id); !strings.Contains(got, words) {
		r.t.Fatalf("%s says %q, want %q in it", id, got, words)
	}
}

// inTaps runs a step and holds the number of touches against what it may take.
func (r *rigside) inTaps(least, most int, step func()) {
	r.t.Helper()
	r.taps = 0
	step()
	if r.taps < least || r.taps > most {
		r.t.Fatalf("it took %d touches, want %d to %d", r.taps, least, most)
	}
}

func TestAUsedPieceGoesInWithItsAnswersInOneTouchAndTheNextComesUp(t *testing.T) {
	r := atRig(t, 125)
	r.touch("door T2@2")
	r.says("piece", "Medium strut 1")
	r.says("piece", "23 lb")
	r.inTaps(1, 1, func() { r.touch("act stow") })
	r.want("R41-028", "home", 1)
	if e := r.last(); e.Reading != "function=yes;clean=yes" || e.By != "M03" || e.Rig != "R41" {
		t.Fatalf("logged %+v", e.Act)
	}
	r.says("piece", "Medium strut 2")
	r.says("header", "1 · of 44 lines in")
}

func TestAPieceThatNeverLeftTheTarpGoesInUnusedWithOneTouch(t *testing.T) {
	r := atRig(t, 133)
	r.touch("door B1", "slot R41-085")
	r.inTaps(1, 1, func() { r.touch("act unused") })
	r.want("R41-085", "home", 1)
	if e := r.last(); e.Reading != "unused" || e.Reply.Word != model.OK {
		t.Fatalf("logged %+v, %+v", e.Act, e.Reply)
	}
	r.touch("slot R41-087")
	if _, ok := r.find(parts.KindAct, "unused"); ok {
		t.Fatal("a rope that was out may not go in unused")
	}
}

func TestALowBatteryIsRefusedAndGoesToTheChargerWithItsReading(t *testing.T) {
	r := atRig(t, 127)
	r.touch("door L1", "slot R41-006")
	r.inTaps(2, 4, func() {
		r.touch("digit 2", "digit 2")
		r.says("verdict", "Not ready")
		r.touch("digit done")
	})
	if e := r.last(); !e.Reply.Has("gate") || e.Reading != "battery=22" {
		t.Fatalf("logged %+v, %+v", e.Act, e.Reply)
	}
	r.says("refused", "To charger")
	r.touch("act charge")
	r.want("R41-006", "charging", 1)
	s := r.board.Picture().State
	if !s.LineOf("R41-006").IsOpen("battery") {
		t.Fatal("the charge that was read is not in the log")
	}
	r.touch("act undo")
	r.want("R41-006", "tarp", 1)
}

func TestAGoodReadingGoesInFromThePadAndABlankNever(t *testing.T) {
	r := atRig(t, 127)
	r.touch("door L1", "slot R41-005", "digit done")
	r.want("R41-005", "tarp", 1)
	r.says("verdict", "A blank never passes")
	r.inTaps(2, 4, func() { r.touch("digit 8", "digit 4", "digit done") })
	r.want("R41-005", "home", 1)
	r.touch("slot R41-009", "digit 9", "digit 9", "digit 9", "digit done")
	r.says("verdict", "from 0 to 100")
	r.want("R41-009", "tarp", 1)
}

func TestABlockedStrutIsCuredByTakingTheNearerCrateOut(t *testing.T) {
	r := atRig(t, 126)
	r.touch("door T2@2", "slot R41-028")
	r.says("blocked", "Left end closed by the strut crate, right end closed by the hand winch crate")
	if p, _ := r.find(parts.KindSlot, "R41-041"); p.State != "alarm" {
		t.Fatalf("the winch crate closes the other end and shows %q", p.State)
	}
	if p, _ := r.find(parts.KindAct, "unstow"); p.State != "next" || !strings.Contains(p.Text, "two people") {
		t.Fatalf("the nearest cure is %+v", p)
	}
	r.inTaps(2, 4, func() { r.touch("act unstow", "act stow") })
	r.want("R41-034", "tarp", 1)
	r.want("R41-028", "home", 1)
}

func TestABlockedStrutThatIsInAnywayIsAskedAndThenLoggedSo(t *testing.T) {
	r := atRig(t, 126)
	r.touch("door T2@2", "slot R41-028")
	r.hold("in-anyway")
	r.want("R41-028", "tarp", 1)
	r.touch("act stow")
	r.want("R41-028", "home", 1)
	if e := r.last(); !model.HasWord(e.Reading, model.WordInAnyway) || !e.Reply.Has("blocked") {
		t.Fatalf("logged %+v, %+v", e.Act, e.Reply)
	}
}

func TestAWetCordGoesInByAnOfficersNameAndStaysNotReady(t *testing.T) {
	r := atRig(t, 131)
	r.touch("door L4", "slot R41-061")
	r.inTaps(2, 4, func() { r.touch("digit 9", "digit 5", "digit done", "act stow") })
	r.want("R41-061", "home", 1)
	r.touch("slot R41-062", "answer dry=no", "act stow")
	if e := r.last(); !e.Reply.Has("gate") || e.Reading != "dry=no;function=yes" {
		t.Fatalf("logged %+v, %+v", e.Act, e.Reply)
	}
	r.touch("act override", "member M02")
	r.want("R41-062", "home", 1)
	s := r.board.Picture().State
	if e := r.last(); !e.Reply.Has("overridden") || e.By != "M03" || !s.Overridden(e.Scene, "R41-062", "dry") {
		t.Fatalf("logged %+v, %+v", e.Act, e.Reply)
	}
	if i := s.Dept.ItemIndex("R41-062"); s.ReadyNow(i) != 0 {
		t.Fatal("a wet cord counts as ready")
	}
}

func TestTheSweepFindsWhatNobodyLogged(t *testing.T) {
	r := atRig(t, 152)
	r.touch("door R4", "act other", "act sweep")
	if p, _ := r.find(parts.KindAct, "all-here"); p.State != "off" {
		t.Fatalf("all here is open over holes: %+v", p)
	}
	r.inTaps(2, 4, func() { r.touch("slot R41-133", "act not-here") })
	r.want("R41-133", "unexplained", 1)
	if e := r.last(); e.Verb != model.Count || e.Quantity != 0 || e.From != "home" {
		t.Fatalf("logged %+v", e.Act)
	}
	if _, ok := r.find(parts.KindAct, "undo"); ok {
		t.Fatal("undo would take back another touch than this count")
	}
	if p, _ := r.find(parts.KindSlot, "R41-133"); p.State != "known-out" {
		t.Fatalf("the hole shows %q", p.State)
	}
}

func TestACountIsBlindAndStartsAgainAfterAPause(t *testing.T) {
	r := atRig(t, 152)
	r.touch("door R4", "act other", "act sweep", "slot R41-139")
	for _, p := range r.parts {
		if p.Kind == parts.KindText && (p.ID == "typed" || p.ID == "verdict") && strings.ContainsAny(p.Text, "46") {
			t.Fatalf("the box gives a figure away: %+v", p)
		}
	}
	r.touch("digit 3")
	r.now = r.now.Add(61 * time.Second)
	r.shell.Refresh()
	if got := r.text("typed"); got != "" {
		t.Fatalf("after a pause the box shows %q", got)
	}
	r.says("piece", "Begin again")
	r.inTaps(2, 4, func() { r.touch("digit 4", "digit done") })
	if e := r.last(); e.Verb != model.Count || e.Quantity != 4 {
		t.Fatalf("logged %+v", e.Act)
	}
}

func TestAKitIsCountedLineByLineAndThenAnswersForItself(t *testing.T) {
	r := atRig(t, 133)
	r.touch("door R4", "slot R41-122", "answer count=no")
	before := len(r.board.Picture().Entries)
	r.touch("digit 3", "digit done", "digit 4", "digit done")
	if len(r.board.Picture().Entries) != before {
		t.Fatal("a count was logged before its last box")
	}
	r.touch("digit 4", "digit done")
	r.want("R41-123", "kit:R41-122", 3)
	r.want("R41-124", "kit:R41-122", 4)
	r.says("piece", "Counted")
	r.touch("act stow")
	r.want("R41-122", "home", 1)
}

func TestAllHereIsOneTouchOnceTheHolesAreFilled(t *testing.T) {
	r := atRig(t, 167)
	r.touch("door T2@8")
	r.touch("act sweep")
	r.inTaps(1, 1, func() { r.touch("act all-here") })
	e := r.last()
	if e.Verb != model.Seen || e.From != e.To || e.Reply.Word != model.OK {
		t.Fatalf("logged %+v, %+v", e.Act, e.Reply)
	}
	if _, ok := r.find(parts.KindAct, "undo"); ok {
		t.Fatal("undo would take back another touch than what was seen")
	}
	if p, _ := r.find(parts.KindDoor, "T2@8"); !strings.Contains(p.Text, "seen") {
		t.Fatalf("the door says %q", p.Text)
	}
}

func TestADoorThatWasNotOpenedIsLoggedByItsName(t *testing.T) {
	r := atRig(t, 167)
	r.touch("door T2@8", "act sweep", "act not-opened")
	if e := r.last(); e.Verb != model.Note || !strings.Contains(e.Note, "not opened") {
		t.Fatalf("logged %+v", e.Act)
	}
	if p, _ := r.find(parts.KindDoor, "T2@8"); !strings.Contains(p.Text, "not opened") {
		t.Fatalf("the door says %q", p.Text)
	}
}

func TestAllFromAPlaceComesBackWithOneTouch(t *testing.T) {
	r := atRig(t, 125)
	r.touch("act other", "act collect")
	r.inTaps(1, 1, func() { r.touch("act return-BANK") })
	r.want("R41-061", "tarp", 1)
	r.want("R41-062", "tarp", 1)
}

func TestOfACountedLineAsMuchComesBackAsIsSaid(t *testing.T) {
	r := atRig(t, 125)
	r.touch("act other", "act collect")
	l := r.shell.screens[ScreenLoadUp].(*loadupScreen)
	was := r.at("R41-177", "at:ROAD")
	l.act("piece:R41-177@at:ROAD") // below the edge of the list
	r.touch("quantity 2")
	r.want("R41-177", "tarp", 2)
	r.want("R41-177", "at:ROAD", was-2)
}

func TestAPieceOfAnotherRigRidesAndStaysTheirs(t *testing.T) {
	r := atRig(t, 153)
	r.touch("act other", "act carry", "piece E42-021@at:BANK")
	r.want("E42-021", "riding:R41", 1)
}

func TestBloodIsNeverWavedPastAndIsBagged(t *testing.T) {
	r := atRig(t, 125)
	r.touch("door R4", "slot R41-138", "answer clean=no", "act stow")
	if _, ok := r.find(parts.KindAct, "override"); !ok {
		t.Fatal("an officer may let dirt pass")
	}
	r.touch("act never-clean")
	if _, ok := r.find(parts.KindAct, "override"); ok {
		t.Fatal("an officer may let blood pass")
	}
	r.touch("act bag")
	r.want("R41-138", "bagged", 3)
	if e := r.last(); e.Reading != "clean=blood" {
		t.Fatalf("logged %+v", e.Act)
	}
}

func TestTheRigAndWhoLoadsAreChosenOnce(t *testing.T) {
	r := atRig(t, 125)
	r.touch("act other", "rig E42")
	r.says("header", "Load up Engine 42")
	r.says("header", "Tamsin Lyle")
}

func TestAnEmptyCylinderIsTaggedAndRidesHomeAndNobodyWavesItPast(t *testing.T) {
	r := atRig(t, 161)
	r.touch("door R4", "slot R41-111", "digit 7", "digit 0", "digit 0", "digit done")
	r.says("refused", "Nobody may wave oxygen past")
	if _, ok := r.find(parts.KindAct, "override"); ok {
		t.Fatal("an officer may wave an oxygen cylinder past")
	}
	r.touch("act tag")
	r.want("R41-111", "home", 1)
	if s := r.board.Picture().State; s.LineOf("R41-111").TaggedHome != 1 {
		t.Fatal("the cylinder is home and not tagged")
	}
}

func TestQuestionsAreShortAndSayWhatToLookAt(t *testing.T) {
	for _, c := range []struct{ id, question, short, look string }{
		{"clean", "Clean; no blood, fuel", "Clean?", "no blood, fuel"},
		{"function", "Runs, opens, no leak", "Works?", "runs, opens, no leak"},
		{"edge", "No chip, burr", "Edge sound?", "no chip, burr"},
		{"dry", "Dry enough to stow", "Dry enough to stow?", ""},
		{"battery", "Charge left, percent", "Charge left?", "percent"},
	} {
		if short, under := askWords(&model.Check{ID: c.id, Question: c.question}); short != c.short || under != c.look {
			t.Errorf("%q asks %q, %q", c.question, short, under)
		}
	}
}

func TestAVisitorWithoutATableHasAScreen(t *testing.T) {
	r := atRig(t, 125)
	if _, err := r.board.Log(board.Tap{Acts: []model.Act{{Verb: model.Arrive, Rig: "T9", Quantity: model.Blank}}}); err != nil {
		t.Fatal(err)
	}
	r.touch("act other", "rig T9")
	r.says("header", "no slots in the table")
}

func TestTheSweepWorksWhenNothingAtAllWasLogged(t *testing.T) {
	r := atRig(t, 8)
	r.touch("door R4", "act sweep", "slot R41-133", "act not-here")
	r.want("R41-133", "unexplained", 1)
}

func TestHomeAsItIsIsHeldAndLeavesItNotReady(t *testing.T) {
	r := atRig(t, 127)
	r.touch("door L1", "slot R41-006", "digit 2", "digit 2", "digit done")
	r.hold("as-is")
	r.want("R41-006", "home", 1)
	if e := r.last(); e.Reading != "battery=22;as_is" || !e.Reply.Has("not_ready") {
		t.Fatalf("logged %+v, %+v", e.Act, e.Reply)
	}
}

func TestADriversWordForAnotherRigIsHeld(t *testing.T) {
	r := atRig(t, 137)
	r.touch("act other", "act carry")
	r.hold("vouch-P71")
	r.want("P71-001", "home", 1)
	if e := r.last(); e.Verb != model.Vouch || e.Rig != "P71" || !e.Reply.Has("by_word") {
		t.Fatalf("logged %+v, %+v", e.Act, e.Reply)
	}
}

package ui

import (
	"strings"
	"testing"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func station(t *testing.T) *window {
	return demoAt(t, 180, ScreenBringBack, sizes[0], look.Options{Day: true})
}

// pick chooses a line of a tab, wherever it lies in the list.
func (w *window) pick(tab, item string, verb model.Verb, from string) {
	w.t.Helper()
	w.tap(parts.KindAct, tab)
	w.shell.screens[ScreenBringBack].(*bringbackScreen).choose(item + " " + string(verb) + " " + from)
	if _, ok := w.find(parts.KindText, "piece"); !ok {
		w.t.Fatalf("%s is not under %s", item, tab)
	}
}

func TestBringBackListsWhatOthersHaveWithSinceWhen(t *testing.T) {
	w := station(t)
	w.textHas("group", "Highway, 555-0133")
	p, ok := w.find(parts.KindPiece, "R41-177")
	if !ok || p.Text != "6 traffic cones 28 in, since 21:06, Della Birch" || p.State != "with:HWY" {
		t.Errorf("%+v", p)
	}
	if p, _ := w.find(parts.KindAct, tabOthers); p.Text != "With others, 14 lines" {
		t.Errorf("%q", p.Text)
	}
}

func TestAPieceComesHomeReadyOnlyWithItsAnswers(t *testing.T) {
	for _, c := range []struct {
		touch [][2]string
		home  int
		doubt int
	}{
		{[][2]string{{"act", "bring-back"}}, 0, 0}, // a question is open
		{[][2]string{{"answer", "clean=yes"}, {"act", "bring-back"}}, 1, 0},
		{[][2]string{{"answer", "clean=no"}, {"act", "bring-back"}}, 1, 1},
		{[][2]string{{"act", "not-looked-at"}}, 1, 1},
	} {
		w := station(t)
		w.tap(parts.KindPiece, "R41-052")
		for _, k := range c.touch {
			w.tap(k[0], k[1])
		}
		l := w.board.Picture().State.LineOf("R41-052")
		if w.at("R41-052", "home") != c.home || l.Doubt != c.doubt {
			t.Errorf("%v: %d home, %d in doubt", c.touch, w.at("R41-052", "home"), l.Doubt)
		}
	}
}

func TestFewerThanAllCanBeBroughtBack(t *testing.T) {
	w := station(t)
	w.tap(parts.KindPiece, "R41-177")
	w.tap(parts.KindAct, "how-many")
	w.tap(parts.KindDigit, "7")
	w.tap(parts.KindDigit, "done") // more than there are: not taken
	w.tap(parts.KindDigit, "delete")
	w.tap(parts.KindDigit, "4")
	w.tap(parts.KindDigit, "done")
	w.tap(parts.KindAct, "not-looked-at")
	if w.at("R41-177", "home") != w.board.Picture().State.Dept.Item("R41-177").Quantity-2 || w.at("R41-177", "with:HWY") != 2 {
		t.Errorf("%d home, %d with them", w.at("R41-177", "home"), w.at("R41-177", "with:HWY"))
	}
}

// answerAll says yes to every question that is on screen.
func (w *window) answerAll() {
	w.t.Helper()
	for _, p := range w.parts {
		if p.Kind == parts.KindAnswer && len(p.ID) > 4 && p.ID[len(p.ID)-4:] == "=yes" {
			w.tap(p.Kind, p.ID)
		}
	}
}

func TestABatteryIsReadBeforeItComesHomeReady(t *testing.T) {
	for typed, doubt := range map[string]int{"79": 1, "80": 0} {
		w := station(t)
		w.pick(tabToDo, "R41-006", model.Recharge, "charging")
		w.tap(parts.KindAct, "read-battery")
		w.tap(parts.KindDigit, "done") // blank never passes
		if _, still := w.find(parts.KindDigit, "1"); !still {
			t.Fatal("a blank reading was taken")
		}
		for _, d := range typed {
			w.tap(parts.KindDigit, string(d))
		}
		w.tap(parts.KindDigit, "done")
		w.answerAll()
		w.tap(parts.KindAct, "recharge")
		if l := w.board.Picture().State.LineOf("R41-006"); w.at("R41-006", "home") != 1 || l.Doubt != doubt {
			t.Errorf("at %s: %d home, %d in doubt, want %d: %+v", typed, w.at("R41-006", "home"), l.Doubt, doubt, w.last())
		}
	}
}

func TestOnlyANamedMemberPutsAPieceBackInService(t *testing.T) {
	w := station(t)
	w.pick(tabOut, "R41-141", model.Repair, "home")
	w.textHas("piece", "Chain sharp: no")
	w.tap(parts.KindAct, "repair")
	if w.board.Picture().State.LineOf("R41-141").Tagged() != 1 {
		t.Fatal("repaired by nobody")
	}
	w.tap(parts.KindMember, "M02")
	w.tap(parts.KindAct, "repair")
	if e := w.last(); e.Verb != model.Repair || e.By != "M02" || w.board.Picture().State.LineOf("R41-141").Tagged() != 0 {
		t.Errorf("%s by %q: %+v", e.Verb, e.By, e.Reply)
	}
}

func TestACylinderIsReadBeforeItIsBackInService(t *testing.T) {
	w := station(t)
	fill := func(typed string) {
		w.pick(tabOut, "R41-111", model.Repair, "home")
		w.tap(parts.KindAct, "read-oxygen")
		for _, d := range typed {
			w.tap(parts.KindDigit, string(d))
		}
		w.tap(parts.KindDigit, "done")
		w.tap(parts.KindMember, "M02")
		w.tap(parts.KindAct, "repair")
	}
	s := func() *model.State { return w.board.Picture().State }
	fill("900")
	if s().LineOf("R41-111").Tagged() != 1 {
		t.Fatal("900 psi passed")
	}
	fill("2000")
	if i := s().Dept.ItemIndex("R41-111"); s().Line(i).Tagged() != 0 || s().ReadyNow(i) != 1 {
		t.Errorf("%d tagged, %d ready", s().Line(i).Tagged(), s().ReadyNow(i))
	}
}

func TestWashedAndDriedPiecesAreReadyAgain(t *testing.T) {
	w := station(t)
	w.pick(tabOut, "R41-138", model.Clean, "bagged")
	w.answerAll()
	w.tap(parts.KindAct, "clean")
	if w.at("R41-138", "bagged") != 0 || w.board.Picture().State.LineOf("R41-138").Doubt != 0 {
		t.Errorf("%d bagged: %+v", w.at("R41-138", "bagged"), w.last().Reply)
	}
	w.pick(tabToDo, "R41-062", model.CheckIt, "home")
	w.answerAll()
	w.tap(parts.KindAct, "check")
	if l := w.board.Picture().State.LineOf("R41-062"); l.Doubt != 0 {
		t.Errorf("%d in doubt: %+v", l.Doubt, w.last().Reply)
	}
}

func TestRestockTakesFromTheStoreWhatWasUsedOrLost(t *testing.T) {
	w := station(t)
	s := func() *model.State { return w.board.Picture().State }
	stock := func(id string) { w.shell.screens[ScreenBringBack].(*bringbackScreen).choose("stock-" + id) }
	w.tap(parts.KindAct, tabRestock)
	stock("ST09")
	w.textHas("piece", "Exam gloves")
	w.tap(parts.KindAct, "how-many")
	w.tap(parts.KindDigit, "5")
	w.tap(parts.KindDigit, "done")
	w.tap(parts.KindAct, "restock")
	if s().Restocked("ST09") != 5 || w.at("R41-117", "used") != 3 {
		t.Errorf("%d taken, %d still used", s().Restocked("ST09"), w.at("R41-117", "used"))
	}
	stock("ST22")
	w.tap(parts.KindAct, "restock")
	if w.at("R41-023", "lost") != 0 || w.at("R41-023", "home") != 2 || s().Restocked("ST22") != 1 {
		t.Errorf("%d lost, %d in the kit: %+v", w.at("R41-023", "lost"), w.at("R41-023", "home"), w.last().Reply)
	}
	stock("ST21") // four blankets: none is used up, two wait to be washed
	w.textHas("fact", "of these bagged or out of service")
	before := len(w.board.Picture().Entries)
	w.tap(parts.KindAct, "restock")
	if len(w.board.Picture().Entries) != before {
		t.Error("blankets that are only to be washed were replaced")
	}
}

func TestRestockGivesNoMoreThanTheStoreHas(t *testing.T) {
	w := station(t)
	use := model.Act{Verb: model.Use, Item: "R41-123", Quantity: 3, From: "home", To: "used"} // with the one used: 4, and 3 in the store
	if _, err := w.board.Log(board.Tap{Acts: []model.Act{use}}); err != nil {
		t.Fatal(err)
	}
	w.tap(parts.KindAct, tabRestock)
	w.shell.screens[ScreenBringBack].(*bringbackScreen).choose("stock-ST06")
	w.textHas("fact", "It cannot give, 1")
	w.tap(parts.KindAct, "restock")
	if w.at("R41-123", "used") != 1 || w.board.Picture().State.Restocked("ST06") != 3 {
		t.Errorf("%d still used, %d taken", w.at("R41-123", "used"), w.board.Picture().State.Restocked("ST06"))
	}
	w.shell.screens[ScreenBringBack].(*bringbackScreen).choose("stock-ST06")
	if p, _ := w.find(parts.KindAct, "restock"); p.State != "off" {
		t.Errorf("an empty store still gives: %+v", p)
	}
}

func TestNoTouchOfBringBackUnbalancesTheBooks(t *testing.T) {
	wander(t, ScreenBringBack, 180, 80, func(w *window) {
		if p, ok := w.find(parts.KindScreen, ScreenMore); ok && p.State != "here" {
			t.Fatal("the rail does not show where I am")
		}
	})
}

func TestWhatWasBroughtBackByMistakeIsTakenBackWithOneTouch(t *testing.T) {
	w := demoAt(t, 180, ScreenBringBack, glass1280, look.Options{})
	before := w.text("header")
	w.tap(parts.KindPiece, "R41-178")
	w.tap(parts.KindAct, "bring-back")
	if got := w.text("reply"); !strings.Contains(got, "Back home: 1 folding road sign") || w.text("header") == before {
		t.Fatalf("the reply is %q, the header %q", got, w.text("header"))
	}
	w.tap(parts.KindAct, "undo")
	n := w.shell.now()
	if got := n.s.LineOf("R41-178").N(model.Place{Kind: model.With, Name: "HWY"}); got != 1 || w.text("header") != before {
		t.Errorf("%d with Highway, the header says %q, before %q", got, w.text("header"), before)
	}
}

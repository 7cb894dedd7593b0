package ui

import (
	"testing"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
)

func TestFindKnowsTheOtherNamesOfAPiece(t *testing.T) {
	for typed, item := range map[string]string{"spi": "R41-100", "bri": "R41-100"} { // the bridle, which some call a spider
		w := demoAt(t, 8, ScreenTarp, glass1280, look.Options{})
		w.tap("act", "find")
		w.write(typed)
		if p, ok := w.find("piece", item); !ok {
			t.Errorf("%s does not find %s: %+v", typed, item, p)
		}
	}
}

func TestMoreThanIsThereIsNeverSentAndTheRestIsOffered(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-056") // all four on the tarp
	if _, err := w.board.Log(board.Tap{Acts: []model.Act{{Verb: model.Hand, Item: "R41-056", Quantity: 3, From: "tarp", To: "at:V2"}}}); err != nil {
		t.Fatal(err)
	}
	if got := w.text("picked"); got == "" || w.shell.tarp().picks[0].n != 1 {
		t.Fatalf("three went meanwhile, and still picked are %+v: %q", w.shell.tarp().picks, got)
	}
	entries := w.shell.logOffer(board.Tap{Acts: []model.Act{{Verb: model.Hand, Item: "R41-056", Quantity: 4, From: "tarp", To: "at:V1"}}})
	if entries[0].Reply.Word != model.Refused {
		t.Fatalf("four of one: %+v", entries[0].Reply)
	}
	if p, ok := w.find("act", "retry"); !ok || p.Text != "Take 1" {
		t.Fatalf("the strip offers %+v: %s", p, w.text("reply"))
	}
	w.tap("act", "retry")
	if w.countAt("R41-056", "at:V1") != 1 {
		t.Errorf("%d at V1", w.countAt("R41-056", "at:V1"))
	}
}

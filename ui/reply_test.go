package ui

import (
	"testing"

	"tarpside/board"
	"tarpside/model"
	"tarpside/model/judge"
	"tarpside/ui/words"
)

func TestARefusalOfTheLogIsReadInTheLanguageOfTheWindowAndInEnglishWordForWord(t *testing.T) {
	w := demoAt(t, 180, ScreenTarp, glass1280, glassLook(glass1280, 1))
	for _, a := range []model.Act{
		{Verb: model.Settle, Item: "R41-001", Quantity: 1, To: "home", By: "M02"},
		{Verb: model.CheckIt, Item: "R41-001", Quantity: 1, By: "M02"},
	} {
		if _, err := w.board.Log(board.Tap{Scene: w.shell.now().scene.ID, Acts: []model.Act{a}}); err != nil {
			t.Fatal(err)
		}
	}
	w.shell.Refresh()
	n := w.shell.now()
	for i := range n.pic.Entries {
		if e := &n.pic.Entries[i]; n.replyText(e) != e.Reply.Text {
			t.Errorf("%q is shown as %q", e.Reply.Text, n.replyText(e))
		}
	}
	speakPseudo(t)
	known := map[string]bool{}
	for i := range n.pic.Entries {
		e := &n.pic.Entries[i]
		if e.Reply.Word != model.Refused {
			continue
		}
		for _, reason := range e.Reply.Reasons {
			if format, ok := refusals[reason]; ok && n.replyText(e) != e.Reply.Text {
				known[reason] = true
				if got := n.replyText(e); got != words.L(format) && got != words.F(format, n.d.Item(e.Item).Name) {
					t.Errorf("%q is shown as %q", e.Reply.Text, got)
				}
			}
		}
	}
	for _, reason := range []string{judge.NoOverride, judge.NotContest, judge.Unanswered} {
		if !known[reason] {
			t.Errorf("no refusal of the demo for %s is translated", reason)
		}
	}
}

package model_test

import (
	"testing"

	"pgregory.net/rapid"

	"tarpside/model"
	"tarpside/model/modeltest"
)

// lines is all that the board knows of its lines but contests, which an undo
// does not bring back.
func lines(s *model.State) string {
	c := s.Clone()
	text := ""
	for i := range c.Dept.Items {
		l := modeltest.Line(c, i)
		l.Contest = nil
		text += modeltest.Text(c.Dept.Items[i].ID, l)
	}
	return text
}

func TestMovesTakenBackNewestFirstLeaveTheLinesAsTheyStood(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := started(t)
		for _, seed := range rows(t, 30) {
			l.Do(modeltest.Entry(modeltest.Rand(seed), l))
		}
		if len(l.State.Held()) > 0 { // a waiting change may come in with any piece that comes home
			return
		}
		scene := l.State.Scenes()[0].ID
		var before []string
		var moves []model.Move
		for _, seed := range rows(t, 6) {
			was := lines(l.State)
			e := l.Do(model.Entry{Act: modeltest.Moving(modeltest.Rand(seed), l.State), Scene: scene})
			switch {
			case !e.Taken():
				continue
			case len(e.Moves) != 1 || e.Verb == model.Match || e.Verb == model.Restock || e.Verb == model.Correct:
				before, moves = nil, nil // what lies before cannot be taken back through it
				continue
			}
			before, moves = append(before, was), append(moves, e.Moves[0])
		}
		for i := len(moves) - 1; i >= 0; i-- {
			m := moves[i]
			from, _ := m.To.MarshalText()
			to, _ := m.From.MarshalText()
			a := model.Act{Verb: model.Correct, Item: m.Item, Quantity: m.N, From: string(from), To: string(to), Holder: "anyone"}
			if e := l.Do(model.Entry{Act: a, Scene: scene}); e.Reply.Word != model.OK || len(e.Reply.Reasons) > 0 {
				t.Fatalf("%s\ndoes not take back %+v", said(e), m)
			}
			if got := lines(l.State); got != before[i] {
				t.Fatalf("after taking back %+v\n%s\nbefore the move\n%s", m, got, before[i])
			}
		}
		same(t, shuffled(t, l.Entries), l.State)
	})
}

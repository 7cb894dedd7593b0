package look_test

import (
	"testing"

	"tarpside/model"
	"tarpside/model/judge"
	"tarpside/model/look"
)

// yard is two rigs with blocks of one family, and wedges without a family.
func yard() *model.State {
	d := (&model.Department{
		Rigs: []model.Rig{{ID: "A1"}, {ID: "B2"}, {ID: "C3"}},
		Items: []model.Item{
			{ID: "A1-1", Name: "Block", Rig: "A1", Kind: model.Counted, Quantity: 10, Family: "crib", LeastUsable: model.Blank},
			{ID: "B2-1", Name: "Block", Rig: "B2", Kind: model.Counted, Quantity: 10, Family: "crib", LeastUsable: model.Blank},
			{ID: "C3-1", Name: "Block", Rig: "C3", Kind: model.Counted, Quantity: 10, Family: "crib", LeastUsable: model.Blank},
			{ID: "A1-2", Name: "Peg", Rig: "A1", Kind: model.Counted, Quantity: 4, LeastUsable: model.Blank},
			{ID: "B2-2", Name: "Peg", Rig: "B2", Kind: model.Counted, Quantity: 4, LeastUsable: model.Blank},
		},
	}).Index()
	return model.NewState(d)
}

func count(t *testing.T, s *model.State, item string, n int) *model.State {
	t.Helper()
	e := &model.Entry{Act: model.Act{Verb: model.Count, Item: item, Quantity: n}, Seen: s.Seen()}
	e.Stamp = model.Stamp{Wall: int64(s.Folded() + 1), Device: "A"}
	next := judge.Judge(s, e)
	if !e.Taken() {
		t.Fatalf("count of %s refused: %s", item, e.Reply.Text)
	}
	return next
}

func TestShortHereAndExtraThereIsAHint(t *testing.T) {
	s := count(t, yard(), "A1-1", 6)
	if got := look.Hints(s); len(got) != 0 {
		t.Errorf("a hint before anybody counted extra: %v", got)
	}
	s = count(t, s, "B2-1", 14)
	got := look.Hints(s)
	if len(got) != 1 || got[0].Line != s.Dept.ItemIndex("A1-1") || got[0].Short != 4 || !got[0].Clear() {
		t.Fatalf("hints %+v, want one clear one for A1-1", got)
	}
	if x := got[0].Extra[0]; x.Line != s.Dept.ItemIndex("B2-1") || x.N != 4 {
		t.Errorf("extra %+v, want 4 of B2-1", x)
	}
}

func TestTwoRigsWithExtraAreBothShownAndNoneIsProposed(t *testing.T) {
	s := count(t, yard(), "A1-1", 6)
	s = count(t, s, "B2-1", 12)
	s = count(t, s, "C3-1", 14)
	got := look.Hints(s)
	if len(got) != 1 || len(got[0].Extra) != 2 || got[0].Clear() {
		t.Fatalf("hints %+v, want both rigs and no proposal", got)
	}
	if got[0].Extra[0].Line != s.Dept.ItemIndex("C3-1") {
		t.Errorf("the one that fits best does not come first: %+v", got[0].Extra)
	}
}

func TestALineWithoutAFamilyMatchesNothing(t *testing.T) {
	s := count(t, yard(), "A1-2", 2)
	s = count(t, s, "B2-2", 6)
	if got := look.Hints(s); len(got) != 0 {
		t.Errorf("hints %+v, want none", got)
	}
}

package modeltest

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/judge"
	"tarpside/model/restock"
)

// Picture is all that people can read off a board, as text. Two boards with
// the same picture are the same to everybody.
func Picture(s *model.State) string {
	var b strings.Builder
	say := func(what string, x any) { b.WriteString(Text(what, x)) }
	for i := range s.Dept.Items {
		say(s.Dept.Items[i].ID, Line(s, i))
	}
	say("proof", s.Proof())
	say("where", s.Where())
	say("end", s.EndState())
	say("ready", s.Ready())
	say("back", s.BringBack())
	say("checkpoints", s.Checkpoints())
	say("restock", restock.List(s))
	say("scenes", s.Scenes())
	say("visitors", s.Visitors())
	say("held", s.Held())
	for _, sc := range s.Scenes() {
		say("account "+sc.ID, s.Account(sc.ID, ""))
		for _, r := range s.Dept.Rigs {
			say("account "+sc.ID+" "+r.ID, s.Account(sc.ID, r.ID))
			say("leaving "+sc.ID+" "+r.ID, judge.Leaving(s, r.ID, sc.ID))
			say("leaving "+r.ID, s.Leaving(r.ID))
		}
	}
	return b.String()
}

// Text is a fact as a line of text.
func Text(what string, x any) string {
	text, err := json.Marshal(x)
	if err != nil {
		text = []byte(err.Error())
	}
	return fmt.Sprintf("%s %s\n", what, text)
}

// Line is all that a board knows of one line, its stacks sorted.
func Line(s *model.State, i int) model.Line {
	l := *s.Line(i)
	l.Stacks = slices.Clone(l.Stacks)
	slices.SortFunc(l.Stacks, func(a, b model.Stack) int {
		return strings.Compare(a.Place.String()+a.Place.Ground, b.Place.String()+b.Place.Ground)
	})
	return l
}

// Check tells what of the board cannot be: books that do not add up, or more
// tags or doubts than pieces.
func Check(s *model.State) error {
	if bad := s.Unbalanced(); len(bad) > 0 {
		return fmt.Errorf("%s does not add up: %+v", s.Dept.Items[bad[0]].ID, s.Line(bad[0]).Stacks)
	}
	for i := range s.Dept.Items {
		l, it := s.Line(i), &s.Dept.Items[i]
		home, out, used := l.N(s.HomeOf(i)), s.Out(i), l.N(model.Place{Kind: model.Used})
		switch {
		case l.TaggedHome < 0 || l.TaggedHome > home:
			return fmt.Errorf("%s: %d tagged of %d at home", it.ID, l.TaggedHome, home)
		case l.TaggedOut < 0 || l.TaggedOut > out:
			return fmt.Errorf("%s: %d tagged of %d out", it.ID, l.TaggedOut, out)
		case l.Doubt < 0 || l.Doubt > home-l.TaggedHome:
			return fmt.Errorf("%s: %d in doubt of %d untagged at home", it.ID, l.Doubt, home-l.TaggedHome)
		case s.FoundAtCount(i) < 0 || s.FoundAtCount(i) > used:
			return fmt.Errorf("%s: %d found at count of %d used", it.ID, s.FoundAtCount(i), used)
		case s.AnyExtra(i) < 0 || s.ReadyNow(i) < 0:
			return fmt.Errorf("%s: %d extra, %d ready", it.ID, s.AnyExtra(i), s.ReadyNow(i))
		}
		met := map[model.Place]bool{}
		for _, st := range l.Stacks {
			if met[st.Place] {
				return fmt.Errorf("%s: two stacks at %s", it.ID, st.Place)
			}
			met[st.Place] = true
		}
	}
	return accounts(s)
}

// accounts holds the trial balance of each scene and rig against its law.
func accounts(s *model.State) error {
	for _, sc := range s.Scenes() {
		whole := s.Account(sc.ID, "")
		var sum model.Account
		for _, r := range s.Dept.Rigs {
			a := s.Account(sc.ID, r.ID)
			if !a.Adds() || a.Home < 0 {
				return fmt.Errorf("the account of %s in scene %q: %+v", r.ID, sc.ID, a)
			}
			sum = plus(sum, a)
		}
		if !whole.Adds() || whole.Home < 0 {
			return fmt.Errorf("the account of scene %q: %+v", sc.ID, whole)
		}
		if sum != whole {
			return fmt.Errorf("the accounts of the rigs make %+v, the whole is %+v", sum, whole)
		}
	}
	return nil
}

func plus(a, b model.Account) model.Account {
	return model.Account{CameOff: a.CameOff + b.CameOff, Home: a.Home + b.Home, Tarp: a.Tarp + b.Tarp, Out: a.Out + b.Out,
		Elsewhere: a.Elsewhere + b.Elsewhere, Carried: a.Carried + b.Carried, With: a.With + b.With,
		Charging: a.Charging + b.Charging, Bagged: a.Bagged + b.Bagged, Used: a.Used + b.Used, Lost: a.Lost + b.Lost,
		Unexplained: a.Unexplained + b.Unexplained}
}

package model

import "strings"

// snapshot keeps a line, and all that is in it, as they stand.
func (s *State) snapshot(line int) []saved {
	out := []saved{{line, s.lines[line]}}
	if s.Dept.Items[line].Kind == Kit {
		s.Inside(line, func(i int) { out = append(out, saved{i, s.lines[i]}) })
	}
	return out
}

// undo takes the line's last move back, if the entry is that move exchanged
// and nothing else was said about the line, what is in it, or a kit it was in.
func (a *act) undo(n int, from, to Place) bool {
	s := a.s
	u := s.undoable(a.line, n, from, to, a.e.Scene)
	if u == nil {
		return false
	}
	for _, b := range u.before {
		c := *b.was
		c.Contest, c.hist = s.lines[b.line].Contest, s.lines[b.line].hist
		c.epoch = s.epoch
		s.lines[b.line] = &c
	}
	l := s.lines[a.line]
	l.hist = &step{prev: l.hist, n: n, from: from, claim: a.claim(to, "")}
	a.ended(a.line, from, to)
	a.out.Undone = true
	a.out.Moves = []Move{{s.Dept.Items[a.line].ID, n, from, to}}
	return true
}

// undoable tells whether a correct with these pieces and places takes the
// line's last move back; nil if it is a plain move.
func (s *State) undoable(line, n int, from, to Place, scene string) *undo {
	l := s.lines[line]
	u := l.undo
	if u == nil || u.move.n != n || u.move.from != to || u.move.claim.Place != from || u.scene != s.Scene(scene).ID ||
		l.touched != u.entry || u.entry <= s.barrier {
		return nil
	}
	fresh := true
	for _, b := range u.before[1:] {
		fresh = fresh && s.lines[b.line].touched <= u.entry
	}
	if s.Dept.Items[line].Kind == Kit {
		s.Inside(line, func(i int) { fresh = fresh && s.lines[i].touched <= u.entry })
	}
	places := []Place{from, to} // and where the line's other pieces are, or were before the move
	for _, stacks := range [][]Stack{l.Stacks, u.before[0].was.Stacks} {
		for _, st := range stacks {
			places = append(places, st.Place)
		}
	}
	for _, p := range places {
		for p.Kind == InKit && fresh {
			k := s.Dept.ItemIndex(p.Name)
			if k < 0 || len(s.lines[k].Stacks) == 0 {
				break
			}
			fresh = s.lines[k].touched <= u.entry
			p = s.lines[k].Stacks[0].Place
		}
	}
	if !fresh {
		return nil
	}
	return u
}

func join(words []string) string { return strings.Join(words, ";") }

package ui

import (
	"fmt"
	"strings"

	"tarpside/model"
	"tarpside/model/match"
	"tarpside/ui/words"
)

// swaps names what is short on this rig and too many on another, or the other
// way round: one clear pair is likely swapped, of several that fit as well all
// are shown. Nothing is settled by it; eyes do that.
func (n *now) swaps(rig string) string {
	short, extra, all := match.Of(n.s, n.known)
	var clear, ties, alone []string
	paired := map[int]bool{}
	for _, m := range all {
		var open []string
		for _, p := range m.Pairs {
			s, x := short[p.Short], extra[p.Extra]
			if s.Rig != rig && x.Rig != rig {
				continue
			}
			paired[x.Line] = true
			pair := n.pairWords(rig, s, x, p)
			if p.Clear() {
				clear = append(clear, pair)
			} else {
				open = append(open, pair)
			}
		}
		if len(open) > 0 {
			ties = append(ties, strings.Join(open, words.L(", or ")))
		}
	}
	for _, x := range extra {
		if x.Rig == rig && !paired[x.Line] {
			alone = append(alone, words.F("%s too many here, whose?", some(&n.d.Items[x.Line], x.N)))
		}
	}
	out := ""
	if len(clear) > 0 {
		out = words.F("Likely swapped: %s.", strings.Join(clear, ". ")) + " "
	}
	if len(ties) > 0 {
		out += words.F("More than one fits: %s.", strings.Join(ties, ". ")) + " "
	}
	if out != "" {
		out += words.L("Look at both before either leaves.") + " "
	}
	if len(alone) > 0 {
		out += capital(strings.Join(alone, ". ")) + "."
	}
	return strings.TrimSpace(out)
}

// pairWords is a pair as it is seen from a rig.
func (n *now) pairWords(rig string, s, x match.Side, p match.Pair) string {
	other := x.N
	if s.Rig != rig {
		other = s.N
	}
	k := fmt.Sprint(other)
	switch {
	case !p.Clear():
		k = words.F("up to %d of %d", p.Most, other)
	case p.Most != other:
		k = words.F("%d of %d", p.Most, other)
	}
	size := ""
	if s.Size != "" && x.Size != "" && s.Size != x.Size {
		size = words.L(", of another size")
	}
	if s.Rig == rig {
		return words.F("%s short here, %s too many on %s%s", some(&n.d.Items[s.Line], s.N), k, n.rigName(x.Rig), size)
	}
	return words.F("%s too many here, %s short on %s%s", some(&n.d.Items[x.Line], x.N), k, n.rigName(s.Rig), size)
}

// known is what the log knows of a pair: both were at one place of the scene.
// Whether a mark was read no entry says.
func (n *now) known(short, extra []match.Side) match.Known {
	at := map[int]map[string]bool{}
	for i := range n.pic.Entries {
		e := &n.pic.Entries[i]
		if e.Scene != n.scene.ID || !e.Taken() {
			continue
		}
		for _, m := range e.Moves {
			if line := n.d.ItemIndex(m.Item); line >= 0 && m.To.Kind == model.At {
				if at[line] == nil {
					at[line] = map[string]bool{}
				}
				at[line][m.To.Name] = true
			}
		}
	}
	return match.Known{SamePlace: func(s, x int) bool {
		for p := range at[short[s].Line] {
			if at[extra[x].Line][p] {
				return true
			}
		}
		return false
	}}
}

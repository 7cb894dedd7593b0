package ui

import (
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// footView is the proof of the scene, as it stands at the foot of every
// screen.
func footView(n *now) parts.FootView {
	a := n.account("")
	v := parts.FootView{CameOff: a.CameOff, OffWord: words.L("came off"), Words: footWords(), Says: words.L("Adds up"), Elsewhere: words.L("elsewhere"), And: words.L("and")}
	v.Counts = footCounts(a)
	if bad := n.s.Unbalanced(); len(bad) > 0 || !a.Adds() {
		v.Wrong, v.Says = true, words.L("Does not add up")
		if len(bad) > 0 {
			v.Line = words.F("%s. No entry is lost", n.d.Items[bad[0]].Name)
		}
	}
	if n.root != nil && n.root.Size().Width < look.U(1100) {
		v.Most = 5
	}
	return v
}

// footCounts puts an account into the order of the foot's terms.
func footCounts(a model.Account) (c [parts.FootTerms]int) {
	c[parts.FootHome], c[parts.FootTarp], c[parts.FootOut] = a.Home, a.Tarp, a.Out+a.Elsewhere
	c[parts.FootCarried], c[parts.FootWith], c[parts.FootCharging] = a.Carried, a.With, a.Charging
	c[parts.FootBagged], c[parts.FootUsed], c[parts.FootLost] = a.Bagged, a.Used, a.Lost
	c[parts.FootUnexplained] = a.Unexplained
	return c
}

// footWords are the terms of the balance.
func footWords() (out [parts.FootTerms]string) {
	for i, w := range parts.FootWords {
		out[i] = words.L(w)
	}
	return out
}

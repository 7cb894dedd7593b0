package ui

import (
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// footView is the proof of the scene, as it stands at the foot of every
// screen.
func footView(n *now) parts.FootView {
	a := n.account("")
	v := parts.FootView{CameOff: a.CameOff, OffWord: "came off", Words: parts.FootWords, Says: "Adds up", Elsewhere: "elsewhere", And: "and"}
	v.Counts = footCounts(a)
	if bad := n.s.Unbalanced(); len(bad) > 0 || !a.Adds() {
		v.Wrong, v.Says = true, "Does not add up"
		if len(bad) > 0 {
			v.Line = n.d.Items[bad[0]].Name + ". No entry is lost"
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

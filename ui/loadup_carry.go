package ui

import (
	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// ownShort are the lines of a rig, of the family of another rig's piece, that
// are neither full at home nor here: the piece may have been taken for one of them.
func (n *now) ownShort(rig string, line int) []int {
	var out []int
	of := &n.d.Items[line]
	for i := range n.d.Items {
		it := &n.d.Items[i]
		if it.Rig != rig || it.Family != of.Family || it.Family == "" {
			continue
		}
		gone := it.Quantity
		for _, st := range n.s.Line(i).Stacks {
			if k := st.Place.Kind; k == model.Tarp || k == model.At || k == model.Used || st.Place == n.s.HomeOf(i) {
				gone -= st.N
			}
		}
		if gone > 0 {
			out = append(out, i)
		}
	}
	return out
}

// carry lets a piece of another rig ride here.
func (l *loadupScreen) carry(n *now, x lying) {
	l.st.bring = ""
	l.move(l.by(n, model.Act{Verb: model.Carry, Item: n.d.Items[x.line].ID, Quantity: x.n, From: x.place.String(), To: "riding:" + l.st.rig}))
}

// carryOrSwap does what was chosen for the piece of another rig in hand.
func (l *loadupScreen) carryOrSwap(n *now, id string) {
	x, ok := n.carriedHere(&l.st)
	if !ok {
		return
	}
	if id == "carry-it" {
		l.carry(n, x)
		return
	}
	for _, i := range n.ownShort(l.st.rig, x.line) {
		if own := &n.d.Items[i]; id == "swap-"+own.ID {
			l.st.bring = ""
			l.sh.log(board.Tap{Acts: []model.Act{l.by(n, model.Act{Verb: model.Match, Item: own.ID, Quantity: 1, Reading: n.d.Items[x.line].ID})}})
		}
	}
}

// carriedHere is the piece of another rig that was touched.
func (n *now) carriedHere(st *luState) (lying, bool) {
	for _, x := range n.others(st.rig) {
		if st.mode == luCarry && lyingID(n, x) == st.bring {
			return x, true
		}
	}
	return lying{}, false
}

// carrySwap asks what a piece of another rig is here: it rides for its owner,
// or one of ours may be with them in its stead. It never goes into our slot.
func (n *now) carrySwap(st *luState, x lying) node {
	it := &n.d.Items[x.line]
	v := leadView{id: "piece", over: words.F("Of %s, not of %s", n.rigName(it.Rig), n.rigName(st.rig)), title: capital(some(it, x.n)), mark: n.mark(it.Rig),
		under: words.L("Its slot is not here. Does it ride home with you, or do they have yours instead?")}
	keys := []node{keyNode(parts.KeyView{ID: "carry-it", Title: words.F("Carry it for %s", n.rigName(it.Rig)), Second: words.L("goes on the bring-back list"), Icon: "carried", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group})}
	own := n.ownShort(st.rig, x.line)
	for _, i := range own[:min(len(own), 2)] {
		o := &n.d.Items[i]
		keys = append(keys, keyNode(parts.KeyView{ID: "swap-" + o.ID, Title: words.F("Swapped with our %s", inSentence(o.Short())), Second: words.L("noted as likely; nothing moves"), Icon: "fork", Lay: parts.LayLeft, Role: look.Group}))
	}
	keys = append(keys, keyNode(parts.KeyView{ID: "drop-it", Title: words.L("Leave it here"), Icon: "back", Lay: parts.LayLeft, Role: look.Group}))
	out := col(0, node{id: "piece", view: v})
	for _, k := range keys {
		out.kids = append(out.kids, sized(k, look.Floor))
	}
	return out
}

// carryReply is the answer to what was carried or said to be swapped.
func (n *now) carryReply(st *luState) (parts.StripView, bool) {
	if st.mode != luCarry || n.said == nil || len(n.said.entries) == 0 {
		return parts.StripView{}, false
	}
	e := &n.said.entries[0]
	if e.Verb != model.Carry && e.Verb != model.Match && e.Verb != model.Vouch || e.Reply.Word == model.Refused || e.Reply.Word == model.Contested {
		return parts.StripView{}, false
	}
	v := parts.StripView{ID: "reply", Tone: parts.StripOK, Title: n.actLine(e), Second: words.Said(e.Reply.Text)}
	if e.Verb == model.Match {
		if theirs, own := n.d.Item(e.Reading), n.d.Item(e.Item); theirs != nil && own != nil {
			v.Title = words.F("Noted: our %s may be with %s", inSentence(own.Short()), n.rigName(theirs.Rig))
		}
	}
	if e.Reply.Word == model.Warned {
		v.Tone = parts.StripWarned
	}
	return v, true
}

package ui

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/loadup"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// nextStop is the door of the load order that comes after this one.
func (n *now) nextStop(st *luState) (loadup.Door, int) {
	var to *loadup.Door
	k := 0
	for _, l := range n.loads(st.rig, st.at) {
		if to == nil && l.Door != *st.at {
			d := l.Door
			to = &d
		}
		if to != nil && l.Door == *to {
			k++
		}
	}
	if to == nil {
		return loadup.Door{}, 0
	}
	return *to, k
}

// A lying is so many pieces of a line on the ground of this scene.
type lying struct {
	line, n int
	place   model.Place
	holder  string
}

// onGround lists what lies on the tarp or at places of this scene by itself.
func (n *now) onGround(want func(rig string, p model.Place) bool) []lying {
	var out []lying
	for i := range n.d.Items {
		for _, s := range n.s.Line(i).Stacks {
			ground := s.Place.Kind == model.Tarp || s.Place.Kind == model.At
			if ground && s.Place.Ground == n.scene.Ground && want(n.d.Items[i].Rig, s.Place) {
				out = append(out, lying{i, s.N, s.Place, s.Holder})
			}
		}
	}
	return out
}

// lyingOut is what of a rig is still at the places, place by place.
func (n *now) lyingOut(rig string) []lying {
	out := n.onGround(func(r string, p model.Place) bool { return r == rig && p.Kind == model.At })
	slices.SortStableFunc(out, func(a, b lying) int { return strings.Compare(a.place.Name, b.place.Name) })
	return out
}

// lyingID is a line at a place in the parts file.
func lyingID(n *now, l lying) string { return n.d.Items[l.line].ID + "@" + l.place.String() }

// collectList is what is to be carried from the places to the tarp.
func (n *now) collectList(st *luState) node {
	all := n.lyingOut(st.rig)
	v := listOf{panel: parts.PanelView{ID: "collect", Title: words.L("Still at the places"), Right: words.N("%d line", "%d lines", len(all))}, gap: look.Gap}
	var rows []node
	for i, l := range all {
		if i == 0 || all[i-1].place != l.place {
			k := 0
			for _, o := range all {
				k += boolInt(o.place == l.place)
			}
			name := n.placeName(l.place)
			label := node{id: "at " + name, view: parts.LabelView{Text: name, Role: look.Place, Mid: true}}
			key := keyNode(parts.KeyView{ID: "return-" + l.place.Name, Title: words.F("All from %s", name), Second: words.F("%s to the tarp", words.N("%d line", "%d lines", k)), Icon: "tarp", Lay: parts.LayLeft, Role: look.Group})
			rows = append(rows, node{view: rowOf{look.Gap}, size: look.Floor + 8, kids: []node{label, wide(key, 2)}})
		}
		r := parts.RowView{Kind: parts.KindPiece, ID: lyingID(n, l), Title: capital(some(&n.d.Items[l.line], l.n)), Right: words.L("to the tarp"), Go: "tarp", State: l.place.String()}
		if l.holder != "" {
			r.Second = words.F("with %s", n.holderWords(l.holder))
		}
		rows = append(rows, row(look.Floor, node{id: r.ID, view: r}))
	}
	if len(all) == 0 {
		rows = append(rows, row(60, node{id: "none", view: parts.LabelView{Text: words.F("Nothing of %s is at a place any more", n.rigName(st.rig)), Role: look.Body}}))
	}
	return node{id: "collect", view: v, kids: rows}
}

func (n *now) holderWords(holder string) string {
	if m := n.d.Member(holder); m != nil {
		return m.Name
	}
	return n.partyName(holder)
}

// collectSide asks how many of a counted line are back, or says what to do.
func (n *now) collectSide(st *luState) node {
	for _, l := range n.lyingOut(st.rig) {
		if lyingID(n, l) != st.bring {
			continue
		}
		it := &n.d.Items[l.line]
		v := leadView{id: "piece", over: words.L("How many are back?"), title: it.Short(), mark: n.mark(it.Rig), line: words.F("%d are at %s by the log", l.n, n.placeName(l.place)), under: words.L("Touch what you carry. The rest stays where it is.")}
		out := col(0, node{id: "piece", view: v})
		var keys []node
		for _, k := range handful(l.n) {
			keys = append(keys, keyNode(parts.KeyView{Kind: parts.KindQuantity, ID: fmt.Sprint(k), Title: fmt.Sprint(k), Lay: parts.LayCentre, Role: look.Hand}))
		}
		keys = append(keys, keyNode(parts.KeyView{Kind: parts.KindQuantity, ID: "all", Title: words.F("All %d", l.n), Tone: parts.Filled, Lay: parts.LayCentre, Role: look.Place}))
		for len(keys) > 0 {
			k := min(3, len(keys))
			out.kids = append(out.kids, row(104, keys[:k]...))
			keys = keys[k:]
		}
		return out
	}
	v := leadView{id: "piece", icon: "tarp", over: words.L("Collect by place"), title: words.L("Touch what is back"), under: words.L("It goes on the load list as soon as it lies there. A piece can also go straight in: touch its slot.")}
	out := col(0, node{id: "piece", view: v})
	if n.visits(st.rig) && len(n.onGround(func(r string, _ model.Place) bool { return r == st.rig })) > 0 {
		out.kids = append(out.kids, n.vouchKey("vouch-"+st.rig, st.rig))
	}
	out.kids = append(out.kids, row(112, keyNode(parts.KeyView{ID: "load", Title: words.L("Back to loading"), Icon: "load", Tone: parts.Filled})))
	return out
}

// visits tells whether a rig is of another department: its driver loads it, and
// his word stands for what he put in.
func (n *now) visits(rig string) bool {
	r := n.d.Rig(rig)
	if r == nil {
		return false
	}
	a := n.d.Agency(r.Agency)
	return a != nil && !strings.HasPrefix(strings.ToLower(a.Kind), "home")
}

// vouchKey takes a driver's word that all of a rig is aboard.
func (n *now) vouchKey(id, rig string) node {
	return sized(node{id: id, view: parts.HoldView{ID: id, Title: words.F("All of %s is aboard", n.rigName(rig)), Second: words.L("hold: by its driver's word"), Sure: words.L("All aboard"), Role: look.Group}}, 96)
}

// others lists the pieces of other rigs that lie about.
func (n *now) others(rig string) []lying {
	out := n.onGround(func(r string, _ model.Place) bool { return r != rig })
	slices.SortStableFunc(out, func(a, b lying) int { return strings.Compare(n.d.Items[a.line].Rig, n.d.Items[b.line].Rig) })
	return out
}

// carryList is what of other rigs could ride home here.
func (n *now) carryList(st *luState) node {
	all := n.others(st.rig)
	slices.SortStableFunc(all, func(a, b lying) int { // what may be taken for ours comes first
		return boolInt(len(n.ownShort(st.rig, b.line)) > 0) - boolInt(len(n.ownShort(st.rig, a.line)) > 0)
	})
	v := listOf{panel: parts.PanelView{ID: "carry", Title: words.L("Of other rigs, on the ground"), Right: words.N("%d line", "%d lines", len(all))}, gap: look.Gap}
	var rows []node
	for _, l := range all {
		it := &n.d.Items[l.line]
		where, _ := n.whereWord(l.place)
		r := parts.RowView{Kind: parts.KindPiece, ID: lyingID(n, l), Mark: n.mark(it.Rig), Title: capital(some(it, l.n)), Second: n.rigName(it.Rig) + ", " + where, Right: words.L("carry"), Go: "carried", State: l.place.String()}
		if len(n.ownShort(st.rig, l.line)) > 0 {
			r.Right = words.L("carry or swap")
		}
		rows = append(rows, row(look.Floor, node{id: r.ID, view: r}))
	}
	if len(all) == 0 {
		rows = append(rows, row(60, node{id: "none", view: parts.LabelView{Text: words.L("Nothing of another rig lies here"), Role: look.Body}}))
	}
	return node{id: "carry", view: v, kids: rows}
}

// carrySide explains, and takes a driver's word for a whole rig.
func (n *now) carrySide(st *luState) node {
	if x, ok := n.carriedHere(st); ok {
		return n.carrySwap(st, x)
	}
	v := leadView{id: "piece", icon: "carried", over: words.L("Carry for others"), title: words.F("Touch what rides on %s", n.rigName(st.rig)),
		under: words.L("It stays theirs, and goes on the bring-back list. It never goes into a slot of this rig.")}
	out := col(0, node{id: "piece", view: v})
	var rigs []string
	for _, l := range n.others(st.rig) {
		if r := n.d.Items[l.line].Rig; !slices.Contains(rigs, r) {
			rigs = append(rigs, r)
		}
	}
	for _, r := range rigs[:min(len(rigs), 2)] {
		id := "vouch"
		if len(rigs) > 1 {
			id = "vouch-" + r
		}
		out.kids = append(out.kids, n.vouchKey(id, r))
	}
	out.kids = append(out.kids, row(96, keyNode(parts.KeyView{ID: "load", Title: words.L("Back to loading"), Icon: "load", Tone: parts.Filled})))
	return out
}

// otherList chooses the rig and who loads it.
func (n *now) otherList(st *luState) node {
	v := listOf{panel: parts.PanelView{ID: "other", Title: words.L("Which rig")}, gap: look.Gap}
	var rows []node
	for _, r := range n.present() {
		in, all := n.progress(r)
		view := parts.RowView{Kind: parts.KindRig, ID: r, Mark: n.mark(r), Title: n.rigName(r), Right: words.F("%d of %d in", in, all), State: "rig"}
		if r == st.rig {
			view.Tone, view.State = parts.Live, "shown"
		}
		rows = append(rows, row(look.Floor, node{id: r, view: view}))
	}
	rows = append(rows, row(30, node{id: "who", view: parts.LabelView{Text: words.L("Who loads"), Role: look.BodyBold, Lines: 1}}))
	for _, own := range []bool{true, false} {
		for _, m := range n.d.Members {
			if m.Agency != n.d.RigAgency(st.rig) || (m.Rig == st.rig) != own {
				continue
			}
			view := parts.RowView{Kind: parts.KindMember, ID: m.ID, Title: m.Name, Second: m.Role, Icon: "one"}
			if m.ID == n.loader(st) {
				view.Tone, view.Right, view.State = parts.Live, words.L("loads"), "loads"
			}
			rows = append(rows, row(look.Floor, node{id: m.ID, view: view}))
		}
	}
	return node{id: "other", view: v, kids: rows}
}

// otherSide is the other work at a rig.
func (n *now) otherSide(st *luState) node {
	key := func(id, title, second, icon string) node {
		return keyNode(parts.KeyView{ID: id, Title: title, Second: second, Icon: icon, Lay: parts.LayLeft})
	}
	half := func(id, title, second, icon string) node {
		return keyNode(parts.KeyView{ID: id, Title: title, Second: second, Icon: icon, Lay: parts.LayLeft, Role: look.Group})
	}
	load := key("load", words.L("Load"), words.L("the next piece in"), "load")
	v := load.view.(parts.KeyView)
	v.Tone = parts.Filled
	load.view = v
	return col(0, load,
		key("sweep", words.L("Look at every slot"), n.doorWords(st.rig, *st.at), "glance"),
		row(0, half("collect", words.L("Collect"), words.F("%s still out", words.N("%d line", "%d lines", len(n.lyingOut(st.rig)))), "tarp"),
			half("carry", words.L("For others"), words.F("%s to carry", words.N("%d line", "%d lines", len(n.others(st.rig)))), "carried")),
		row(0, half("time", words.L("How long still"), n.roughly(st.rig, false), "hourglass"),
			half("paper", words.L("On paper"), words.L("the put-back list, to tick"), "paper")))
}

package ui

import (
	"tarpside/model"
	"tarpside/model/rundown"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// swapsFor are the pieces that may come back for one that was sent to a place:
// what has a gauge, as a battery or a cylinder, goes out full and another of
// its family comes back empty. A touch logs it, so that the two stand together.
func (n *now) swapsFor(a *along) []int {
	first := n.d.ItemIndex(a.item)
	if a.to.Kind != model.At || first < 0 || !n.gauged(first) {
		return nil
	}
	it := &n.d.Items[first]
	var out []int
	for i := range n.d.Items {
		o := &n.d.Items[i]
		if i != first && o.Family == it.Family && o.Family != "" && o.Quantity == 1 && n.gauged(i) && n.s.Line(i).N(a.to) > 0 {
			out = append(out, i)
		}
	}
	return out
}

// gauged tells whether a piece is asked for a number: a charge, a pressure.
func (n *now) gauged(i int) bool {
	_, ok := rundown.Gauge(n.d, &n.d.Items[i])
	return ok
}

// swapTiles are the tiles of what may come back to the tarp.
func (n *now) swapTiles(a *along, hidden map[string]bool) []parts.TileView {
	readings := n.readings()
	var out []parts.TileView
	for _, i := range n.swapsFor(a) {
		if hidden[n.d.Items[i].Rig] {
			continue
		}
		v := n.tile(i, a.to, model.Place{}, nil, readings)
		v.Icon, v.Second = "back", words.L("comes back")
		out = append(out, v)
	}
	return out
}

// wave remembers that what might go along with a piece was let go without a
// touch. Waved off twice, it is not asked again in this scene.
func (t *tarpScreen) wave() {
	if t.along != nil && !t.along.used && t.along.asked {
		t.waved[t.along.item]++
	}
}

// wavedMost is how often a prompt may be waved off before it keeps silent.
const wavedMost = 2

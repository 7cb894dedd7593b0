package ui

import (
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/look"
	uilook "tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// byOdds ranks the steps by the odds: chance x sight / minutes, best first,
// worked out anew after each look that found nothing. To count again costs no
// walk and comes first; what the table of chances does not know comes last.
func (n *now) byOdds(h hunt, t trail, steps []step) {
	places := n.sumSettings().look.Places(n.oddsClues(h, t, steps))
	for i := range places { // the tarp has a name of its own there
		if places[i].ID == "tarp" {
			places[i].ID = tarpKey
			places[i].Unsafe = slices.ContainsFunc(steps, func(s step) bool { return s.key == tarpKey && s.state == stepUnsafe })
		}
	}
	order, _ := look.After(places, n.failed(t, steps)...)
	for i := range steps {
		k := slices.IndexFunc(order, func(p look.Place) bool { return p.ID == steps[i].key })
		switch {
		case steps[i].own:
			steps[i].rank = 0
		case k < 0:
			steps[i].rank = len(order) + 1
		default:
			steps[i].rank = k + 1
		}
	}
}

// tarpKey is the step that looks under the tarp, as it is logged.
const tarpKey = "the tarp and under it"

// oddsClues are what the log knows of a piece, by the keys of the steps.
func (n *now) oddsClues(h hunt, t trail, steps []step) look.Clues {
	it := &n.d.Items[h.line]
	c := look.Clues{Dim: it.Small || it.Dark || n.isNight()}
	for i := range steps {
		s := &steps[i]
		x := look.Named{ID: s.key, Name: s.title}
		if s.state == stepUnsafe {
			c.Unsafe = append(c.Unsafe, s.key)
		}
		switch {
		case s.own:
		case s.key == tarpKey:
			c.Tarp = true
		case strings.HasPrefix(s.key, "other slots of "):
			c.OwnRig = &x
		case strings.HasPrefix(s.key, "ask the last holder"):
			c.Holder = &x
		case s.asks:
			c.Others = append(c.Others, look.Party{Named: x, Sibling: s.ask != "" && n.setWent(h.line, s.ask)})
		case t.last.Kind == model.At && s.key == n.placeName(t.last):
			c.LastPlaces = append(c.LastPlaces, x)
		}
	}
	return c
}

// setWent tells whether an agency has a piece that goes along with a line: of
// the same kit, with another name in common, or next to it in a pull list with
// the same need.
func (n *now) setWent(line int, agency string) bool {
	it := &n.d.Items[line]
	at := model.Place{Kind: model.With, Name: agency}
	for i := range n.d.Items {
		o := &n.d.Items[i]
		if i == line || o.Rig != it.Rig || n.s.Line(i).N(at) == 0 {
			continue
		}
		if it.Kit != "" && o.Kit == it.Kit || slices.ContainsFunc(o.OtherNames, func(w string) bool { return slices.Contains(it.OtherNames, w) }) || n.pulledWith(it.ID, o.ID) {
			return true
		}
	}
	return false
}

// pulledWith tells whether two items stand near each other in a pull list with
// the same need.
func (n *now) pulledWith(a, b string) bool {
	for k, p := range n.d.Pulls {
		if p.Item != a && p.Item != b {
			continue
		}
		for j := k + 1; j < len(n.d.Pulls) && j <= k+followers && n.d.Pulls[j].List == p.List && n.d.Pulls[j].Need == p.Need; j++ {
			if o := n.d.Pulls[j].Item; o != p.Item && (o == a || o == b) {
				return true
			}
		}
	}
	return false
}

// isNight tells whether it is dark by the clock: from seven in the evening to
// six (from memory; the season is not asked).
func (n *now) isNight() bool { return n.at.Hour() >= 19 || n.at.Hour() < 6 }

// failed are the looks that found nothing, by the keys of their steps, in
// their order. One that was a wrong tap is taken back.
func (n *now) failed(t trail, steps []step) []string {
	var out []string
	for k := range t.looks {
		text, marks := lookWords(t.looks[k].Reading)
		i := slices.IndexFunc(steps, func(s step) bool { return strings.EqualFold(s.key, text) || s.is != nil && s.is(text) })
		if i < 0 {
			continue
		}
		key := steps[i].key
		switch {
		case slices.Contains(marks, "wrong_tap"):
			for j := len(out) - 1; j >= 0; j-- {
				if out[j] == key {
					out = slices.Delete(out, j, j+1)
					break
				}
			}
		case slices.ContainsFunc(marks, func(w string) bool { return strings.HasPrefix(w, "skipped=") }):
		default:
			out = append(out, key)
		}
	}
	return out
}

// hazards are why a place is not safe to look at, as they are logged.
var hazards = []struct{ id, title, icon string }{
	{"traffic", words.K("Traffic"), "warn"}, {"load", words.K("It may fall or roll"), "warn"}, {"lines", words.K("Power lines"), "warn"}, {"other", words.K("Something else"), "warn"},
}

// whyWord is why a look was not safe, in marks, "" if nobody said.
func whyWord(marks []string) string {
	for _, w := range marks {
		k, v, ok := strings.Cut(w, "=")
		if !ok || k != "why" {
			continue
		}
		for _, z := range hazards {
			if z.id == v {
				return low(words.L(z.title))
			}
		}
		return v
	}
	return ""
}

// hazardKeys ask why it is not safe there.
func hazardKeys() node {
	var keys []node
	for _, z := range hazards {
		keys = append(keys, keyNode(parts.KeyView{ID: "unsafe-" + z.id, Title: words.L(z.title), Lay: parts.LayCentre, Role: uilook.Group}))
	}
	return row(92, append(keys, sized(keyNode(parts.KeyView{ID: "back", Title: words.L("Back"), Lay: parts.LayCentre}), 104))...)
}

package ui

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// Places that are keys but no place of the log.
const (
	placeHome = "home" // back home: goes in, or opens Load up
	placeNew  = "new"
)

// placeKeys are the places along the edge, in a fixed order: what is picked
// decides what a touch on each would do.
func (n *now) placeKeys(shown model.Place, picks []pick, last string, lastAt bool) []parts.PlaceKeyView {
	ground := n.scene.Ground
	tarp := model.Place{Kind: model.Tarp, Ground: ground}
	keys := []parts.PlaceKeyView{n.placeKey(tarp, shown, picks, last), n.homeKey(picks)}
	for _, name := range n.scenePlaces() {
		keys = append(keys, n.placeKey(model.Place{Kind: model.At, Name: name, Ground: ground}, shown, picks, last))
	}
	for _, code := range n.agenciesHere() {
		keys = append(keys, n.placeKey(model.Place{Kind: model.With, Name: code}, shown, picks, last))
	}
	keys = append(keys, n.placeKey(model.Place{Kind: model.Used}, shown, picks, last))
	n.markLikeliest(keys, picks, last, lastAt)
	add := parts.PlaceKeyView{ID: placeNew, Name: words.L("New place"), Icon: "plus", Verb: words.L("say a name")}
	if n.readsOnly() {
		add.Mode, add.Verb = parts.PlaceShut, words.L("only reads")
	}
	return append(keys, add)
}

// scenePlaces are the places of the scene: those of the table, those added,
// and any where pieces are.
func (n *now) scenePlaces() []string {
	var out []string
	add := func(name string) {
		if name != "" && !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	for _, p := range n.d.Places {
		add(p.Place)
	}
	for _, name := range n.addedTo(settingPlaces) {
		add(name)
	}
	for _, r := range n.books() {
		if r.Place.Kind == model.At && r.Place.Ground == n.scene.Ground {
			add(r.Place.Name)
		}
	}
	return out
}

// Before the scene: the places, and the agencies, that somebody named.
const (
	settingPlaces   = "places:"
	settingAgencies = "agencies:"
)

// addedTo are the names that somebody gave on the spot.
func (n *now) addedTo(setting string) []string {
	text, err := n.opts.Board.Setting(setting + n.scene.ID)
	var names []string
	if err != nil || json.Unmarshal([]byte(text), &names) != nil {
		return nil
	}
	return names
}

// addPlace keeps a place, or an agency that no table lists, that somebody
// named.
func (n *now) addPlace(setting, name string) error {
	kind := model.At
	if setting == settingAgencies {
		kind = model.With
	}
	name = strings.TrimSpace(name)
	if _, err := model.ParsePlace(string(kind) + ":" + name); err != nil {
		return err
	}
	text, err := json.Marshal(append(n.addedTo(setting), name))
	if err != nil {
		return err
	}
	return n.opts.Board.SetSetting(setting+n.scene.ID, string(text))
}

func (n *now) placeKey(p, shown model.Place, picks []pick, last string) parts.PlaceKeyView {
	v := parts.PlaceKeyView{ID: p.String(), Name: n.placeName(p)}
	lines := 0
	for i := range n.d.Items {
		if n.s.Line(i).N(p) > 0 {
			lines++
		}
	}
	switch p.Kind {
	case model.Tarp, model.At:
		v.Count, v.Unit = fmt.Sprint(lines), words.N("line", "lines", lines)
		v.Verb = n.meaning(p.Name)
	case model.With:
		v.Icon, v.Verb = "with", words.L("goes with")
		if lines > 0 {
			v.Verb = words.N("has %d line", "has %d lines", lines)
		}
	case model.Used:
		v.Name, v.Icon, v.Verb = words.L("Used up"), "used", words.L("stays used")
	}
	if v.ID == last && len(picks) == 0 && p.Kind != model.Used {
		v.Verb = words.L("last place")
	}
	if p == shown {
		v.Mode = parts.PlaceOpen
	}
	if len(picks) > 0 {
		n.target(&v, p, picks)
	}
	return v
}

// target says what a touch on the place would do with what is picked.
func (n *now) target(v *parts.PlaceKeyView, p model.Place, picks []pick) {
	v.Mode = parts.PlaceTarget
	verbs := map[string]bool{}
	for _, k := range picks {
		verb, why := n.verbFor(k, p)
		if verb == "" {
			v.Mode, v.Verb = parts.PlaceShut, why
			return
		}
		verbs[verbWords[verb]] = true
	}
	for w := range verbs {
		v.Verb = words.L(w)
	}
	if len(verbs) > 1 {
		v.Verb = words.L("send")
	}
}

// markLikeliest fills one key: the last place once more for pieces that go
// out, as when four people take things to one vehicle; the tarp for pieces
// that come back, unless the last ones went from place to place as well.
func (n *now) markLikeliest(keys []parts.PlaceKeyView, picks []pick, last string, lastAt bool) {
	if len(picks) == 0 {
		return
	}
	from, likely := picks[0].from.Kind, string(model.Tarp)
	if last != "" && (from != model.At || lastAt) {
		likely = last
	}
	try := func(id string) bool {
		for i := range keys {
			if keys[i].ID == id && keys[i].Mode == parts.PlaceTarget {
				keys[i].Mode = parts.PlaceLikeliest
				return true
			}
		}
		return false
	}
	if !try(likely) {
		try(string(model.Tarp))
	}
}

var verbWords = map[model.Verb]string{
	model.PullOff: words.K("stage"), model.Direct: words.K("straight off"), model.Hand: words.K("hand out"), model.MoveTo: words.K("move"),
	model.Return: words.K("bring back"), model.TakeOut: words.K("take out"), model.Use: words.K("used up"), model.Handover: words.K("hand over"),
	model.Lend: words.K("lend"), model.TakeBack: words.K("take back"), model.Found: words.K("found"),
}

// verbFor is the verb that takes a pick to a place, or why there is none.
func (n *now) verbFor(k pick, to model.Place) (verb model.Verb, why string) {
	i := n.d.ItemIndex(k.item)
	if i < 0 {
		return "", words.L("not listed")
	}
	from := k.from
	onRig := from.Kind == model.Home || from.Kind == model.InKit
	ground := onRig || from.Kind == model.Tarp || from.Kind == model.At
	switch {
	case from == to:
		return "", words.L("here now")
	case n.readsOnly():
		return "", words.L("only reads")
	case to.Kind == model.Used:
		if n.d.Items[i].Kind != model.Consumable {
			return "", words.L("comes back")
		}
		if !ground {
			return "", words.L("not here")
		}
		return model.Use, ""
	case to.Kind == model.With && ground:
		return n.handVerb(to.Name), ""
	case from.Kind == model.With || from.Kind == model.Riding:
		if to.Kind == model.Tarp {
			return model.TakeBack, ""
		}
		return "", words.L("tarp first")
	case from.Kind == model.InKit && n.s.Real(from).Kind != model.Home && (to.Kind == model.Tarp || to.Kind == model.At):
		return model.TakeOut, ""
	case onRig && to.Kind == model.Tarp:
		return model.PullOff, ""
	case onRig && to.Kind == model.At:
		return model.Direct, ""
	case from.Kind == model.Tarp && to.Kind == model.At:
		return model.Hand, ""
	case from.Kind == model.At && to.Kind == model.Tarp:
		return model.Return, ""
	case from.Kind == model.At && to.Kind == model.At:
		return model.MoveTo, ""
	case (from.Kind == model.Unexplained || from.Kind == model.Lost) && (to.Kind == model.Tarp || to.Kind == model.At):
		return model.Found, ""
	}
	return "", words.L("not from there")
}

// handVerb is how pieces go to an agency: handed over with a patient, or lent.
func (n *now) handVerb(agency string) model.Verb {
	if a := n.d.Agency(agency); a != nil {
		kind := strings.ToLower(a.Kind)
		if strings.Contains(kind, "ems") || strings.Contains(kind, "ambulance") || strings.Contains(kind, "hospital") {
			return model.Handover
		}
	}
	return model.Lend
}

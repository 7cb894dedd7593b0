package ui

import (
	"cmp"
	"slices"
	"strings"

	"tarpside/board/ledger"
	"tarpside/model"
	label "tarpside/model/code"
	"tarpside/ui/words"
)

// scanned does what a code says: it picks a piece where it is, sends what is
// picked to a place, or shows a slot. Codes are those of our labels, ids,
// marks that are painted on, and names of places.
func (sh *Shell) scanned(code string) {
	code = strings.TrimSpace(code)
	n, t := sh.now(), sh.tarp()
	if sh.empty() {
		return // the screen already says that no department is loaded
	}
	t.find.on, t.door = false, ""
	sh.here, sh.over = ScreenTarp, nil
	if id, ok := n.placeOf(code); ok {
		for _, p := range t.picks {
			to, err := n.s.Resolve(id, -1, n.scene.ID)
			if verb, why := n.verbFor(p, to); id != placeHome && (err != nil || verb == "") {
				sh.say(words.F("The %s does not go to %s: %s", n.itemName(p.item), n.placeName(to), why), words.L("Nothing moved"), words.L("It is still picked"))
				return
			}
		}
		t.send(id)
		return
	}
	lines := n.marked(code)
	if len(lines) == 0 {
		switch what, id, err := label.Find(n.d, code); {
		case err == nil && what == label.Slot:
			sh.said = nil
			sh.open(newSlotPage(sh, id))
			return
		case err == nil:
			lines = n.marked(id)
		case label.Meant(code):
			sh.say(words.F("The label %q was read or typed wrong, or is of no piece and no slot here", code), words.L("Nothing changed"), words.L("Scan it once more, or find it by its letters"))
			return
		}
	}
	if len(lines) != 1 {
		what := words.F("No piece and no place has the code %q", code)
		if len(lines) > 1 {
			what = words.F("%d pieces have the code %q", len(lines), code)
		}
		sh.say(what, words.L("Nothing changed"), words.L("Find it by its letters instead"))
		return
	}
	i := lines[0]
	from, ok := n.reach(i, t.shown)
	if !ok {
		sh.say(words.F("The %s cannot be picked", n.itemName(n.d.Items[i].ID)), words.F("It is %s", n.gonePlace(i)), words.L("Undo, or Bring back, puts it right"))
		return
	}
	for _, p := range t.picks {
		if p.item == n.d.Items[i].ID && p.from == from {
			sh.said = nil // read twice: it stays picked
			sh.refresh()
			return
		}
	}
	t.touch(n.tile(i, from, t.shown, nil, nil))
}

// say puts words of the window's own into the strip: what happened, what is
// safe, what to do.
func (sh *Shell) say(what, safe, do string) {
	sh.said = &said{trouble: &ledger.Trouble{What: what, Safe: safe, Do: do}}
	sh.refresh()
}

// placeOf is the key of a place that a code names: "at:V1", "V1", "TARP".
func (n *now) placeOf(code string) (id string, ok bool) {
	for _, k := range n.placeKeys(model.Place{}, nil, "", false) {
		_, name, _ := strings.Cut(k.ID, ":")
		if k.ID != placeNew && (strings.EqualFold(code, k.ID) || strings.EqualFold(code, name) && name != "" || strings.EqualFold(code, k.Name)) {
			return k.ID, true
		}
	}
	return "", false
}

// marked are the lines that a code names: by the item's id, or by what is
// painted on it.
func (n *now) marked(code string) []int {
	var out []int
	for i := range n.d.Items {
		it := &n.d.Items[i]
		if strings.EqualFold(it.ID, code) {
			return []int{i}
		}
		if it.Mark != "" && strings.EqualFold(strings.Join(strings.Fields(it.Mark), " "), strings.Join(strings.Fields(code), " ")) {
			out = append(out, i)
		}
	}
	return out
}

// reach is where a piece of a line is picked: at the place that is shown if
// it is there, else nearest to hand; false where it is used up or lost.
func (n *now) reach(line int, shown model.Place) (model.Place, bool) {
	rank := func(p model.Place) int {
		switch {
		case p == shown:
			return 0
		case p.Kind == model.Tarp && p.Ground == n.scene.Ground:
			return 1
		case p.Kind == model.At && p.Ground == n.scene.Ground:
			return 2
		case p == n.s.HomeOf(line):
			return 3
		case p.Kind == model.Used || p.Kind == model.Lost:
			return 9
		}
		return 4
	}
	var spots []model.Place
	for _, st := range n.s.Line(line).Stacks {
		if st.N > 0 && rank(st.Place) < 9 {
			spots = append(spots, st.Place)
		}
	}
	if len(spots) == 0 {
		return model.Place{}, false
	}
	return slices.MinFunc(spots, func(a, b model.Place) int { return cmp.Compare(rank(a), rank(b)) }), true
}

// gonePlace is where the books have a line of which nothing is left to pick.
func (n *now) gonePlace(line int) string {
	for _, st := range n.s.Line(line).Stacks {
		if st.N > 0 {
			return strings.ToLower(n.placeName(st.Place))
		}
	}
	return words.L("not listed anywhere")
}

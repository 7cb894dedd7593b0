package ui

import (
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// holdChoice holds what is picked where it lies.
const holdChoice = "hold-evidence"

// nobody stands for no holder where one is chosen.
const nobody = "nobody"

// holderFor is who holds what goes to a place: whoever was named for this
// touch, else the crew that the place had last in this scene. With an agency
// a person is named or not.
func (n *now) holderFor(to model.Place, named *string) string {
	if named != nil {
		return *named
	}
	if to.Kind != model.At {
		return ""
	}
	for k := len(n.pic.Entries) - 1; k >= 0; k-- {
		e := &n.pic.Entries[k]
		if e.Holder == "" || e.Scene != n.scene.ID || !e.Taken() {
			continue
		}
		for _, m := range e.Moves {
			if m.To == to {
				return e.Holder
			}
		}
	}
	return ""
}

// holderName is a holder in words: a person, or the crew of a rig.
func (n *now) holderName(id string) string {
	if n.s.KnownRig(id) {
		return words.F("%s crew", n.rigName(id))
	}
	return n.memberName(id)
}

// nameHolder asks who takes what is picked: a crew first, a person second.
func (t *tarpScreen) nameHolder() {
	n := t.sh.now()
	list := []choice{{kind: parts.KindMember, id: nobody, title: words.L("Nobody"), second: words.L("no name")},
		{kind: parts.KindAct, id: holdChoice, title: words.L("Do not move it"), second: words.L("evidence: say who and why")}}
	for _, r := range n.present() {
		list = append(list, choice{kind: parts.KindRig, id: r, title: words.F("%s crew", n.rigName(r)), mark: n.mark(r)})
	}
	for _, m := range n.crew() {
		c := choice{kind: parts.KindMember, id: m.ID, title: m.Name, second: m.Role, mark: n.crewMark(m)}
		list = append(list, c)
	}
	t.sh.open(newChooser(t.sh, words.L("Who takes it?"), words.L("For this touch; a place keeps the crew it had last"), list, func(id string) {
		switch id {
		case holdChoice:
			t.sh.back()
			t.holdPicked()
			return
		case nobody:
			id = ""
		}
		t.named = &id
		t.sh.back()
	}))
}

// setBack makes the next act one, two, five or ten minutes earlier, but not
// before the scene opened.
func (t *tarpScreen) setBack() {
	next := 0
	for _, k := range []int{10, 5, 2, 1} {
		if k > t.earlier && k <= t.sh.now().minute() {
			next = k
		}
	}
	t.earlier = next
	t.sh.refresh()
}

// aidKeys are the keys beside the strip while pieces are picked: the last
// place again, who takes it, and that it was earlier.
func (t *tarpScreen) aidKeys() []*parts.Key {
	return []*parts.Key{
		parts.NewKey(parts.KeyView{}, func() { t.send(t.last) }),
		parts.NewKey(parts.KeyView{}, t.nameHolder),
		parts.NewKey(parts.KeyView{}, t.setBack),
	}
}

func (t *tarpScreen) showAids(n *now) {
	again := parts.KeyView{ID: "again", Title: words.L("Again"), Second: parts.Or(words.L("no place"), words.L("none")), Icon: "go", Off: true}
	if p, err := model.ParsePlace(t.last); err == nil {
		p.Ground = n.scene.Ground
		again.Title = words.F("To %s", n.placeName(p))
		again.Second, again.Off = words.L("again"), !n.allGo(t.picks, p)
	}
	who := parts.KeyView{ID: "holder", Title: words.L("Who"), Second: parts.Or(words.L("as before"), words.L("same")), Icon: "one"}
	if t.named != nil {
		who.Tone, who.Title, who.Second = parts.Live, words.L("Nobody"), ""
		if *t.named != "" {
			who.Title = n.memberShort(*t.named)
			if n.s.KnownRig(*t.named) {
				who.Title = words.F("%s crew", *t.named)
			}
		}
	}
	back := parts.KeyView{ID: "earlier", Title: words.L("Earlier"), Second: words.L("now"), Icon: "clock", Off: n.minute() < 1}
	if t.earlier > 0 {
		back.Tone, back.Title = parts.Live, words.F("%d min", t.earlier)
		back.Second = words.F("at %s", n.clock(n.at.UnixMilli()-int64(t.earlier)*60_000))
	}
	for i, v := range []parts.KeyView{again, who, back} {
		v.Lay, v.Role = parts.LayStack, look.BodyBold
		t.aids[i].Set(n.shutKey(v))
	}
}

// allGo tells whether all that is picked can go to a place.
func (n *now) allGo(picks []pick, to model.Place) bool {
	for _, p := range picks {
		if verb, _ := n.verbFor(p, to); verb == "" {
			return false
		}
	}
	return len(picks) > 0
}

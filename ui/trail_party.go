package ui

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	litter "tarpside/model/trail"
)

// settingParty and a scene's id is the name of the setting that keeps what was
// chosen for the party of that scene.
const settingParty = "party:"

// partyPlace is the place of the scene that the party's pieces go to.
const partyPlace = "Trail"

// A party is what somebody chose for those who walk. It is kept at every
// touch, so that it is there again after a crash. Nobody's weight is in it.
type party struct {
	Trip    litter.Trip    `json:"trip"`
	List    string         `json:"list,omitempty"`   // the pull list; nothing for the one for a trail
	People  []carrier      `json:"people,omitempty"` // who walk
	Chosen  map[string]int `json:"chosen,omitempty"` // pieces by item, where not as the list says
	Rig     map[string]int `json:"rig,omitempty"`    // seen by item, before the walk
	Patient map[string]int `json:"patient,omitempty"`
	Back    map[string]int `json:"back,omitempty"` // before the walk back
	First   string         `json:"first,omitempty"`
	Second  string         `json:"second,omitempty"` // who looked with the first
	Walked  int64          `json:"walked,omitempty"` // Unix ms
	Anyway  string         `json:"anyway,omitempty"` // why they walked unverified
}

// A carrier is one who walks: a member's id, or one without a name. Limit is
// in pounds; nought is the usual one.
type carrier struct {
	ID    string  `json:"id"`
	Limit float64 `json:"limit,omitempty"`
}

// noName begins the id of one who walks and is no member.
const noName = "helper-"

// load takes up what was chosen for the scene that is worked on.
func (t *trailScreen) load(n *now) {
	if t.scene != nil && *t.scene == n.scene.ID {
		return
	}
	id := n.scene.ID
	t.scene, t.p = &id, party{}
	text, err := n.opts.Board.Setting(settingParty + id)
	if err != nil || json.Unmarshal([]byte(text), &t.p) != nil {
		t.p = party{}
	}
	t.rest()
}

// keep writes what was chosen, but for the patient's weight, which is kept
// nowhere. What could not be kept holds until the window closes, and the strip
// says so.
func (t *trailScreen) keep() {
	p := t.p
	p.Trip.PatientLb = 0
	text, err := json.Marshal(p)
	if err == nil {
		err = t.sh.opts.Board.SetSetting(settingParty+t.n.scene.ID, string(text))
	}
	if err != nil {
		t.sh.said = &said{trouble: inWords(err)}
	}
}

// walks is where one stands among those who walk, or -1.
func (p *party) walks(id string) int {
	return slices.IndexFunc(p.People, func(c carrier) bool { return c.ID == id })
}

// addNoName adds one who is no member.
func (p *party) addNoName() string {
	for i := 1; ; i++ {
		if id := fmt.Sprint(noName, i); p.walks(id) < 0 {
			p.People = append(p.People, carrier{ID: id})
			return id
		}
	}
}

// walkerName is one who walks, in words.
func (n *now) walkerName(id string) string {
	if k, ok := strings.CutPrefix(id, noName); ok {
		return "Helper " + k
	}
	return n.memberName(id)
}

// carriers are those who walk, each with a limit.
func (n *now) carriers(p *party) []litter.Carrier {
	out := make([]litter.Carrier, 0, len(p.People))
	for _, c := range p.People {
		l := litter.Carrier{Member: c.ID, Name: n.walkerName(c.ID), BodyLb: litter.BodyLb, OwnLb: litter.OwnGearLb, Guessed: true}
		if m := n.d.Member(c.ID); m != nil {
			l = litter.CarrierOf(m)
		}
		if c.Limit > 0 {
			l.Most, l.Guessed = c.Limit, false
		}
		out = append(out, l)
	}
	return out
}

// trailList is the pull list that the party walks with: the chosen one, else
// the first whose
// name has the trail or a carry in it; nothing if there is none.
func (n *now) trailList(p *party) string {
	lists := n.pullLists()
	if slices.Contains(lists, p.List) {
		return p.List
	}
	for _, word := range []string{"trail", "carry", "litter"} {
		for _, l := range lists {
			if strings.Contains(strings.ToLower(l), word) {
				return l
			}
		}
	}
	return ""
}

package trail

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
)

// A Party is what somebody chose for those who walk. Nobody's weight is meant
// to be kept in it.
type Party struct {
	Trip    Trip           `json:"trip"`
	List    string         `json:"list,omitempty"`   // the pull list; nothing for the one for a trail
	People  []Walker       `json:"people,omitempty"` // who walk
	Chosen  map[string]int `json:"chosen,omitempty"` // pieces by item, where not as the list says
	Rig     map[string]int `json:"rig,omitempty"`    // seen by item, before the walk
	Patient map[string]int `json:"patient,omitempty"`
	Back    map[string]int `json:"back,omitempty"` // before the walk back
	First   string         `json:"first,omitempty"`
	Second  string         `json:"second,omitempty"` // who looked with the first
	Walked  int64          `json:"walked,omitempty"` // Unix ms
	Home    int64          `json:"home,omitempty"`   // when all was brought back to the tarp
	Anyway  string         `json:"anyway,omitempty"` // why they walked unverified
}

// A Walker is one who walks: a member's id, or one without a name. Limit is in
// pounds; nought is the usual one.
type Walker struct {
	ID    string  `json:"id"`
	Limit float64 `json:"limit,omitempty"`
}

// noName begins the id of one who walks and is no member.
const noName = "helper-"

// NoName tells whether an id is of one who is no member, and of which.
func NoName(id string) (which string, ok bool) { return strings.CutPrefix(id, noName) }

// WalkerName is one who walks, in words.
func WalkerName(d *model.Department, id string) string {
	if k, ok := NoName(id); ok {
		return "Helper " + k
	}
	if m := d.Member(id); m != nil {
		return m.Name
	}
	return id
}

// Walks is where one stands among those who walk, or -1.
func (p *Party) Walks(id string) int {
	return slices.IndexFunc(p.People, func(w Walker) bool { return w.ID == id })
}

// AddNoName adds one who is no member and returns the id.
func (p *Party) AddNoName() string {
	for i := 1; ; i++ {
		if id := fmt.Sprint(noName, i); p.Walks(id) < 0 {
			p.People = append(slices.Clone(p.People), Walker{ID: id})
			return id
		}
	}
}

// Carriers are those who walk, each with a limit.
func (p *Party) Carriers(d *model.Department) []Carrier {
	out := make([]Carrier, 0, len(p.People))
	for _, w := range p.People {
		c := Carrier{Member: w.ID, Name: WalkerName(d, w.ID), BodyLb: BodyLb, OwnLb: OwnGearLb, Guessed: true}
		if m := d.Member(w.ID); m != nil {
			c = CarrierOf(m)
		}
		if w.Limit > 0 {
			c.Most, c.Guessed = w.Limit, false
		}
		out = append(out, c)
	}
	return out
}

// ListIn is the pull list that the party walks with: the chosen one, else the
// first whose name has the trail or a carry in it; nothing if there is none.
func (p *Party) ListIn(d *model.Department) string {
	for _, word := range []string{"trail", "carry", "litter"} {
		for _, x := range d.Pulls {
			if p.List != "" && x.List == p.List {
				return x.List
			}
		}
		for _, x := range d.Pulls {
			if strings.Contains(strings.ToLower(x.List), word) {
				return x.List
			}
		}
	}
	return ""
}

// Lines are what the list asks for, and what was made of it.
func (p *Party) Lines(s *model.State) (asked, lines []Line) {
	asked = List(s, p.ListIn(s.Dept), p.Trip, len(p.People))
	return asked, Choose(asked, p.Chosen)
}

package model

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// PlaceKind is the first part of a place's name and the column of the proof.
type PlaceKind string

// The kinds of place, in the order of the proof.
const (
	Home        PlaceKind = "home"        // its own slot
	Tarp        PlaceKind = "tarp"        // the staging tarp
	At          PlaceKind = "at"          // a place of the scene
	InKit       PlaceKind = "kit"         // inside a kit
	With        PlaceKind = "with"        // an agency has it
	Riding      PlaceKind = "riding"      // on a rig that does not own it
	Charging    PlaceKind = "charging"    // on a charger
	Bagged      PlaceKind = "bagged"      // sealed, contaminated
	Used        PlaceKind = "used"        // used up
	Unexplained PlaceKind = "unexplained" // counted short
	Lost        PlaceKind = "lost"        // search closed by an officer
)

// PlaceKinds lists every kind in the order of the proof.
var PlaceKinds = []PlaceKind{Home, Tarp, At, InKit, With, Riding, Charging, Bagged, Used, Unexplained, Lost}

// A Place is where pieces are. Name is the word after the colon ("V1",
// "MED9"). Ground tells the tarp and the places of two open scenes apart; it
// is empty but for a scene that was opened while another was open.
type Place struct {
	Kind   PlaceKind
	Name   string
	Ground string
}

// named are the kinds that need a word after the colon.
func (k PlaceKind) named() bool { return k == At || k == InKit || k == With || k == Riding }

const groundMark = "\x1f" // between a place and its ground, in entries only

// ParsePlace reads "home", "tarp", "at:V1", "with:MED9" and so on. Control
// characters, bytes that are no text and a missing word are errors.
func ParsePlace(text string) (Place, error) {
	text = strings.TrimSpace(text)
	body, ground, marked := strings.Cut(text, groundMark)
	kind, name, colon := strings.Cut(body, ":")
	p := Place{Kind: PlaceKind(strings.TrimSpace(kind)), Name: strings.TrimSpace(name), Ground: ground}
	known := false
	for _, k := range PlaceKinds {
		known = known || k == p.Kind
	}
	switch {
	case !known:
		return Place{}, fmt.Errorf("no place is called %q", text)
	case p.Kind.named() && p.Name == "":
		return Place{}, fmt.Errorf("%q needs a word after the colon", text)
	case !p.Kind.named() && colon:
		return Place{}, fmt.Errorf("%q takes no word after it", string(p.Kind))
	case marked && (!p.onScene() || ground == ""):
		return Place{}, fmt.Errorf("%q is not a place of a scene", string(p.Kind))
	case strings.ContainsFunc(p.Name+ground, unicode.IsControl) || !utf8.ValidString(text):
		return Place{}, fmt.Errorf("%q has a character that is no text", text)
	}
	return p, nil
}

// String is the place as the tables print it, without its ground.
func (p Place) String() string {
	if p.Kind.named() {
		return string(p.Kind) + ":" + p.Name
	}
	return string(p.Kind)
}

// MarshalText writes the place with its ground, for entries.
func (p Place) MarshalText() ([]byte, error) {
	s := p.String()
	if p.Ground != "" {
		s += groundMark + p.Ground
	}
	return []byte(s), nil
}

// UnmarshalText reads what MarshalText wrote.
func (p *Place) UnmarshalText(b []byte) (err error) {
	if len(b) == 0 {
		*p = Place{}
		return nil
	}
	*p, err = ParsePlace(string(b))
	return err
}

// onScene is a place that belongs to one scene: its tarp or a place of it.
func (p Place) onScene() bool { return p.Kind == Tarp || p.Kind == At }

// gone is a place from which nothing is brought home by hand: used or lost.
func (p Place) gone() bool { return p.Kind == Used || p.Kind == Lost }

// near is where nothing can have happened to a piece: its slot or the tarp.
func (p Place) near() bool { return p.Kind == Home || p.Kind == Tarp }

package model

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// A Disposition says what is still to be done about pieces of a line.
type Disposition struct {
	Line     int
	Quantity int
	Place    Place
	Words    string
}

// EndState lists all that a scene leaves to do, sorted by item and place:
// every line and place but home and kits, and what is home but not fit.
func (s *State) EndState() []Disposition {
	var out []Disposition
	for _, r := range s.Books() {
		out = append(out, Disposition{r.Line, r.Quantity, r.Place, s.disposition(r)})
	}
	for i := range s.lines {
		if n, words := s.atHomeWords(i); words != "" {
			out = append(out, Disposition{i, n, s.HomeOf(i), words})
		}
	}
	slices.SortFunc(out, func(a, b Disposition) int {
		return cmp.Or(strings.Compare(s.Dept.Items[a.Line].ID, s.Dept.Items[b.Line].ID),
			strings.Compare(a.Place.String(), b.Place.String()))
	})
	return out
}

// disposition is what is to be done about pieces away from home.
func (s *State) disposition(r PlaceRow) string {
	l := s.lines[r.Line]
	words := ""
	switch r.Place.Kind {
	case Charging:
		words = "charge; not ready"
	case Bagged:
		return "laundry; out of service"
	case Lost:
		words = "lost report; replace"
	case Unexplained:
		words = "look for it"
	case Tarp:
		words = "still on the tarp"
	case At:
		words = "still out"
	case With, Riding:
		words = "bring back from " + r.Place.Name
	case Used:
		found := s.FoundAtCount(r.Line)
		return fmt.Sprintf("restock (%d logged, %d found at count)", r.Quantity-found, found)
	}
	if l.TaggedOut > 0 {
		words += "; out of service: " + l.TagWords
	}
	return words
}

// atHomeWords is what is to be done about pieces that are really home, and
// how many they are.
func (s *State) atHomeWords(i int) (int, string) {
	if !s.Aboard(i) {
		return 0, ""
	}
	l := s.lines[i]
	n := 0
	var words []string
	switch {
	case l.TaggedHome > 0:
		n, words = l.TaggedHome, append(words, "out of service: "+l.TagWords)
	case l.Doubt > 0 && l.Waved:
		n, words = l.Doubt, append(words, "on rig with officer override: "+join(l.DoubtWords))
	case l.Doubt > 0:
		n, words = l.Doubt, append(words, "on rig, not ready: "+join(l.DoubtWords))
	}
	if w := s.kitWords(i); w != "" {
		words = append(words, w)
		n = max(n, 1)
	}
	return n, strings.Join(words, "; ")
}

func (s *State) kitWords(i int) string {
	if s.Dept.Items[i].Kind != Kit {
		return ""
	}
	switch s.KitState(i) {
	case ShortUsable:
		return "short kit, usable"
	case NotUsable:
		return "short kit, not usable"
	}
	fit := true
	s.Inside(i, func(in int) { fit = fit && s.lines[in].TaggedHome == 0 })
	if !fit {
		return "complete, not fit"
	}
	return ""
}

package ui

import (
	"fmt"
	"strings"
	"unicode"

	"tarpside/model"
	"tarpside/model/loadup"
	"tarpside/ui/words"
)

// closedBy names what keeps the slot of a line closed.
func (n *now) closedBy(line int) []string {
	if n.s.HomeOf(line).Kind != model.Home {
		return nil
	}
	return loadup.ClosedBy(n.s, line)
}

func (n *now) itemName(id string) string {
	if it := n.d.Item(id); it != nil {
		return it.Short()
	}
	return id
}

func (n *now) names(ids []string) string {
	var out []string
	for _, id := range ids {
		out = append(out, inSentence(n.itemName(id)))
	}
	return and(out)
}

// inSentence is a name inside a sentence: "strut crate", but "AED".
func inSentence(name string) string {
	r := []rune(name)
	if len(r) < 2 || !unicode.IsLower(r[1]) {
		return name
	}
	r[0] = unicode.ToLower(r[0])
	return string(r)
}

// and joins words: "a", "a and b", "a, b and c".
func and(said []string) string {
	if k := len(said); k > 1 {
		return words.F("%s and %s", strings.Join(said[:k-1], ", "), said[k-1])
	}
	return strings.Join(said, "")
}

// pounds is a weight in words.
func pounds(lb float64, it *model.Item) string {
	switch {
	case it.NoWeight:
		return words.L("weight unknown")
	case lb < 1:
		return words.L("under 1 lb")
	}
	return words.F("%.0f lb", lb)
}

// whereWords says where the pieces of a line are that are not home, and gives
// the icon of the first such place.
func (n *now) whereWords(i int) (said, icon string) {
	var out []string
	one := n.d.Items[i].Quantity == 1
	for _, st := range n.s.Line(i).Stacks {
		if st.Place == n.s.HomeOf(i) {
			if !one {
				out = append([]string{words.F("%d home", st.N)}, out...)
			}
			continue
		}
		w, ic := n.whereWord(st.Place)
		if !one {
			w = fmt.Sprintf("%d %s", st.N, w)
		}
		if icon == "" {
			icon = ic
		}
		out = append(out, w)
	}
	return strings.Join(out, ", "), icon
}

// awayFrom is the first place of a line that is not its own.
func (n *now) awayFrom(i int) model.Place {
	for _, st := range n.s.Line(i).Stacks {
		if st.Place != n.s.HomeOf(i) {
			return st.Place
		}
	}
	return model.Place{}
}

func (n *now) whereWord(p model.Place) (word, icon string) {
	switch p.Kind {
	case model.Tarp:
		return words.L("on the tarp"), "tarp"
	case model.At:
		return words.F("at %s", n.placeName(p)), "go"
	case model.With:
		return words.F("with %s", n.placeName(p)), "with"
	case model.Riding:
		return words.F("on %s", n.placeName(p)), "carried"
	case model.Charging:
		return words.L("on the charger"), "plug"
	case model.Bagged:
		return words.L("bagged"), "bag"
	case model.Used:
		return words.L("used up"), "used"
	case model.Lost:
		return words.L("lost"), "lost"
	case model.Unexplained:
		return words.L("looked for"), "look"
	case model.InKit:
		return words.F("in %s", n.placeName(p)), "kit"
	}
	return words.L("home"), ""
}

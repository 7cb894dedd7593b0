package ui

import (
	"fmt"
	"strings"
	"unicode"

	"tarpside/model"
	"tarpside/model/loadup"
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
func and(words []string) string {
	if k := len(words); k > 1 {
		return strings.Join(words[:k-1], ", ") + " and " + words[k-1]
	}
	return strings.Join(words, "")
}

// pounds is a weight in words.
func pounds(lb float64, it *model.Item) string {
	switch {
	case it.NoWeight:
		return "weight unknown"
	case lb < 1:
		return "under 1 lb"
	}
	return fmt.Sprintf("%.0f lb", lb)
}

// whereWords says where the pieces of a line are that are not home, and gives
// the icon of the first such place.
func (n *now) whereWords(i int) (words, icon string) {
	var out []string
	one := n.d.Items[i].Quantity == 1
	for _, st := range n.s.Line(i).Stacks {
		if st.Place == n.s.HomeOf(i) {
			if !one {
				out = append([]string{fmt.Sprintf("%d home", st.N)}, out...)
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

func (n *now) whereWord(p model.Place) (word, icon string) {
	switch p.Kind {
	case model.Tarp:
		return "on the tarp", "tarp"
	case model.At:
		return "at " + n.placeName(p), "go"
	case model.With:
		return "with " + n.placeName(p), "with"
	case model.Riding:
		return "on " + n.placeName(p), "carried"
	case model.Charging:
		return "on the charger", "plug"
	case model.Bagged:
		return "bagged", "bag"
	case model.Used:
		return "used up", "used"
	case model.Lost:
		return "lost", "lost"
	case model.Unexplained:
		return "looked for", "look"
	case model.InKit:
		return "in " + n.placeName(p), "kit"
	}
	return string(p.Kind), ""
}

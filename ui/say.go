package ui

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// low writes a name as it stands inside a sentence: "battery cutter", but "AED".
func low(name string) string {
	r := []rune(name)
	if len(r) < 2 || !unicode.IsLower(r[1]) {
		return name
	}
	return string(unicode.ToLower(r[0])) + string(r[1:])
}

// some is so many pieces of a line in a sentence: "battery cutter" for the one
// there is, else "4 step chocks". A comma in a name would split it in a list.
func some(it *model.Item, n int) string {
	name := low(it.Short())
	if n != 1 && it.Quantity != 1 {
		name = many(name)
	}
	if it.Quantity != 1 {
		name = fmt.Sprintf("%d %s", n, name)
	}
	return strings.ReplaceAll(name, ",", "")
}

// uneven are the nouns of a rig that take no s: some stay as they are.
var uneven = map[string]string{"foot": "feet", "knife": "knives", "water": "water", "gauze": "gauze"}

// many is a name for more than one: "Crib blocks 4x4x20". What stands after
// the noun, from the first figure or comma on, stays as it is.
func many(name string) string {
	words := strings.Fields(name)
	noun := len(words) - 1
	for i, w := range words {
		if i > 0 && unicode.IsDigit([]rune(w)[0]) {
			noun = i - 1
			break
		}
		if strings.HasSuffix(w, ",") {
			noun = i
			break
		}
	}
	if noun < 0 {
		return name
	}
	w, comma := strings.CutSuffix(words[noun], ",")
	switch {
	case uneven[w] != "":
		w = uneven[w]
	case strings.HasSuffix(w, "s"):
	case strings.HasSuffix(w, "x"), strings.HasSuffix(w, "ch"), strings.HasSuffix(w, "sh"):
		w += "es"
	case strings.HasSuffix(w, "y") && !strings.ContainsAny(w[max(len(w)-2, 0):len(w)-1], "aeiou"):
		w = w[:len(w)-1] + "ies"
	default:
		w += "s"
	}
	if comma {
		w += ","
	}
	words[noun] = w
	return strings.Join(words, " ")
}

// listed joins names as they are said: "a, b and c".
func listed(names []string) string {
	switch n := len(names); n {
	case 0:
		return ""
	case 1:
		return names[0]
	default:
		return words.F("%s and %s", strings.Join(names[:n-1], ", "), names[n-1])
	}
}

// capital begins a sentence.
func capital(s string) string {
	if s == "" {
		return s
	}
	r := []rune(s)
	return string(unicode.ToUpper(r[0])) + string(r[1:])
}

// familyName is what the lines of a family are called: the first critical
// one, or the first where none is, as far as others share its words, without a number or what stands
// after a comma. "Medium strut", "Oxygen D".
func (n *now) familyName(lines []int) string {
	stem := func(i int) []string {
		name, _, _ := strings.Cut(n.d.Items[i].Short(), ",")
		return strings.Fields(name)
	}
	var words []string
	if len(lines) > 0 {
		words = stem(lines[max(0, slices.IndexFunc(lines, func(i int) bool { return n.d.Items[i].Critical }))])
	}
	for _, i := range lines {
		w := stem(i)
		k := 0
		for k < len(w) && k < len(words) && w[k] == words[k] {
			k++
		}
		if k > 0 {
			words = words[:k]
		}
	}
	for len(words) > 1 && strings.Trim(words[len(words)-1], "0123456789") == "" {
		words = words[:len(words)-1]
	}
	return strings.Join(words, " ")
}

// sentView is what a rig could not do, or only just, if it were sent now.
type sentView struct {
	Rig   string
	Name  string
	None  []string // families of which not one is ready
	Few   []string // "1 of 2 fog nozzles": not enough
	Short []string // enough, but not all
	Note  string   // instead of all that: its pieces are not listed

	Why map[string][2]string // why pieces that are aboard do not count, in short and at length, by the words for the family
}

// How much of the reasons is said.
const (
	noWhy = iota
	shortWhy
	longWhy
)

// bad tells whether the rig could not do something.
func (v sentView) bad() bool { return len(v.None)+len(v.Few) > 0 }

// words is the view in sentences, with as many names as most; the rest is a
// number. Where it says why, it says what keeps pieces that are aboard from
// counting.
func (v sentView) words(most, why int) string {
	if v.Note != "" {
		return v.Note
	}
	if !v.bad() && len(v.Short) == 0 {
		return words.L("All its critical pieces are ready.")
	}
	left := most
	take := func(names []string) []string {
		k := min(max(left, 0), len(names))
		left -= k
		taken := slices.Clone(names[:k])
		for i, name := range taken {
			if reason, ok := v.Why[name]; ok && why > noWhy {
				taken[i] = words.F("%s (%s)", name, reason[why-shortWhy])
			}
		}
		return taken
	}
	var out []string
	none, few, short := take(v.None), take(v.Few), []string(nil)
	if len(none) > 0 {
		out = append(out, words.F("No %s.", strings.Join(none, ", ")))
	}
	if len(few) > 0 {
		out = append(out, words.F("Only %s.", strings.Join(few, ", ")))
	}
	rest := len(v.None) + len(v.Few) - len(none) - len(few)
	if rest > 0 {
		out = append(out, words.F("%d more.", rest))
	} else if short = take(v.Short); len(short) > 0 {
		out = append(out, words.F("Enough, but not all: %s.", strings.Join(short, ", ")))
	}
	if rest = len(v.Short) - len(short); rest > 0 && rest < len(v.Short) {
		out = append(out, words.F("%d more.", rest))
	}
	return strings.Join(out, " ")
}

// whole is the view with every name and reason.
func (v sentView) whole() string { return v.words(v.count(), longWhy) }

// longest is as much of the view as has room. A reason comes before names of
// what there is enough of, and in short before it is left out.
func (v sentView) longest(p *parts.Pen, role look.Role, w float32, lines int) string {
	for k := v.count(); k >= max(1, len(v.None)+len(v.Few)); k-- {
		if v.words(k, shortWhy) == v.words(k, noWhy) {
			break
		}
		for why := longWhy; why > noWhy; why-- {
			if s := v.words(k, why); fitsOn(p, s, role, w, lines) {
				return s
			}
		}
	}
	return longest(p, v.count(), role, w, lines, func(k int) string { return v.words(k, noWhy) })
}

// count is how many names the view has.
func (v sentView) count() int { return len(v.None) + len(v.Few) + len(v.Short) }

// sent is the view for one rig. Critical families come in the order of the
// table, because that is the order in which a crew knows them.
func (n *now) sent(rig string) sentView {
	v := sentView{Rig: rig, Name: n.rigName(rig), Why: map[string][2]string{}}
	for _, r := range n.ready() {
		if r.Rig != rig {
			continue
		}
		name := low(n.familyName(r.Lines))
		of := words.F("%d of %d %s", r.Now, r.Full, low(many(n.familyName(r.Lines))))
		switch {
		case r.Enough:
			v.Short = append(v.Short, of)
		case r.Now == 0:
			v.None, of = append(v.None, name), name
		default:
			v.Few = append(v.Few, of)
		}
		if long, short := n.aboardBut(r.Lines); long != "" {
			v.Why[of] = [2]string{short, long}
		}
	}
	if !slices.ContainsFunc(n.d.Items, func(it model.Item) bool { return it.Rig == rig }) {
		v.Note = words.L("Its pieces are not listed.")
	}
	return v
}

// aboardBut says why pieces of a family that are aboard, and not tagged, do not
// count as ready.
func (n *now) aboardBut(lines []int) (long, short string) {
	unread, unpassed := 0, 0
	for _, i := range lines {
		l := n.s.Line(i)
		if l.Doubt == 0 || !n.s.Aboard(i) {
			continue
		}
		if slices.ContainsFunc(n.d.Items[i].Checks, func(a model.Ask) bool {
			c := n.d.Check(a.Check)
			return c != nil && c.Number && l.Unasked(a.Check)
		}) {
			unread += l.Doubt
		} else {
			unpassed += l.Doubt
		}
	}
	var longs, shorts []string
	if unread > 0 {
		longs, shorts = append(longs, words.N("%d gauge not read", "%d gauges not read", unread)), append(shorts, words.F("%d unread", unread))
	}
	if unpassed > 0 {
		longs, shorts = append(longs, words.F("%d did not pass the check", unpassed)), append(shorts, words.F("%d not passed", unpassed))
	}
	return listed(longs), listed(shorts)
}

// crewOf names a holder only if he is not of the owner's crew: "P71 crew",
// "Medic 9".
func (n *now) crewOf(holder, rig string) string {
	m := n.d.Member(holder)
	switch {
	case holder == "":
		return ""
	case m == nil:
		return holder
	case m.Rig == rig:
		return ""
	case n.d.Rig(m.Rig) != nil:
		return words.F("%s crew", m.Rig)
	case n.d.Agency(m.Rig) != nil:
		return n.partyName(m.Rig)
	}
	return m.Name
}

// atScene tells whether a rig is at the scene: it came and has not left.
func (n *now) atScene(rig string) bool {
	if len(n.scene.Arrived) == 0 {
		return true
	}
	return slices.Contains(n.scene.Arrived, rig) && !slices.Contains(n.scene.Left, rig)
}

// memberShort is a member with what he is in front: "Capt Valcourt",
// "Driver Askew".
func (n *now) memberShort(id string) string {
	m := n.d.Member(id)
	if m == nil {
		return id
	}
	f := strings.Fields(m.Name)
	if len(f) == 0 {
		return id
	}
	return strings.TrimSpace(rankWord(m.Role) + " " + f[len(f)-1])
}

// memberFull is the rank and the whole name.
func (n *now) memberFull(id string) string {
	m := n.d.Member(id)
	if m == nil {
		return id
	}
	return strings.TrimSpace(rankWord(m.Role) + " " + m.Name)
}

var rankShort = map[string]string{"captain": words.K("Capt"), "lieutenant": words.K("Lt"), "chief": words.K("Chief"), "driver": words.K("Driver"), "deputy": words.K("Deputy"), "paramedic": words.K("Medic")}

func rankWord(role string) string {
	first, _, _ := strings.Cut(strings.ToLower(role), " ")
	first, _, _ = strings.Cut(strings.TrimSuffix(first, ","), "/")
	return words.L(rankShort[first])
}

// signers are the members who may sign for a rig: its officers, its drivers,
// then the rest of its crew, then the other officers.
func (n *now) signers(rig string) []string {
	var out []string
	add := func(want func(m *model.Member) bool) {
		for i := range n.d.Members {
			if m := &n.d.Members[i]; want(m) && !slices.Contains(out, m.ID) {
				out = append(out, m.ID)
			}
		}
	}
	add(func(m *model.Member) bool { return m.Rig == rig && m.Officer })
	add(func(m *model.Member) bool { return m.Rig == rig && strings.Contains(strings.ToLower(m.Role), "driver") })
	add(func(m *model.Member) bool { return m.Rig == rig })
	add(func(m *model.Member) bool { return m.Officer })
	return out
}

// officers are the members who may accept what a rig leaves: those of the rig
// that stays first.
func (n *now) officers(stays string) []string {
	var own, rest []string
	for i := range n.d.Members {
		if m := &n.d.Members[i]; m.Officer && m.Rig == stays {
			own = append(own, m.ID)
		} else if m.Officer {
			rest = append(rest, m.ID)
		}
	}
	return append(own, rest...)
}

package stores

import (
	"slices"
	"strconv"
	"strings"

	"tarpside/model"
)

// The cells that say more than a text, a number or yes.

// parts splits a cell at its separators; blank parts are none.
func parts(s, separator string) []string {
	var out []string
	for _, p := range strings.Split(s, separator) {
		if p = strings.TrimSpace(p); p != "" {
			out = append(out, p)
		}
	}
	return out
}

func getOtherNames(x *model.Item) string { return strings.Join(x.OtherNames, "; ") }

func setOtherNames(x *model.Item, s string) fault {
	x.OtherNames = parts(s, ";")
	return fault{}
}

func setKind(x *model.Item, s string) fault {
	switch k := model.Kind(strings.TrimSpace(s)); k {
	case model.Piece, model.Counted, model.Consumable, model.Kit:
		x.Kind = k
		return fault{}
	}
	return fault{say(s) + " is no kind of line", "piece, counted, consumable or kit"}
}

// setQuantity: a piece and a kit have a name and a mark, so they are one; a
// blank says so. Of what is counted somebody must say how many there are.
func setQuantity(x *model.Item, s string) (f fault) {
	one := x.Kind == model.Piece || x.Kind == model.Kit
	s = strings.TrimSpace(s)
	switch {
	case s == "" && (x.Kind == model.Counted || x.Kind == model.Consumable):
		return fault{"blank", "how many there are"}
	case s == "":
		x.Quantity = 1
		return fault{}
	}
	x.Quantity, f = parseWhole(s, 0)
	switch {
	case f.wrong != "" || !one || x.Quantity == 1:
		return f
	case x.Kind == model.Kit:
		return fault{s + " kits in one line", "1; each kit has a line of its own"}
	}
	return fault{s + " of a marked piece", "1; a number belongs to a line of kind counted or consumable"}
}

func getWeight(x *model.Item) string {
	if x.NoWeight {
		return ""
	}
	return figure(x.WeightLb)
}

func setWeight(x *model.Item, s string) (f fault) {
	s = strings.TrimSpace(s)
	if x.NoWeight = s == ""; !x.NoWeight {
		x.WeightLb, f = parseNumber(s)
	}
	return f
}

func getLeast(x *model.Item) string {
	if x.LeastUsable == model.Blank {
		return ""
	}
	return strconv.Itoa(x.LeastUsable)
}

func setLeast(x *model.Item, s string) (f fault) {
	x.LeastUsable = model.Blank
	if s = strings.TrimSpace(s); s != "" {
		x.LeastUsable, f = parseWhole(s, 0)
	}
	return f
}

func getAsks(x *model.Item) string {
	out := make([]string, len(x.Checks))
	for i, a := range x.Checks {
		if out[i] = a.Check; a.HasLimit {
			out[i] += ">=" + figure(a.Limit)
		}
	}
	return strings.Join(out, ";")
}

// setAsks reads "function;edge;clean" or "battery>=80".
func setAsks(x *model.Item, s string) fault {
	x.Checks = nil
	for _, p := range parts(s, ";") {
		name, limit, has := strings.Cut(p, ">=")
		a := model.Ask{Check: strings.TrimSpace(name), HasLimit: has}
		if has {
			var f fault
			if a.Limit, f = parseNumber(strings.TrimSpace(limit)); f.wrong != "" {
				return fault{"in " + say(p) + " " + f.wrong, a.Check + ">= and a number"}
			}
		}
		switch {
		case strings.ContainsAny(a.Check, "<>="):
			return fault{say(p) + " is not a check with its limit", "CHECK or CHECK>=NUMBER"}
		case slices.ContainsFunc(x.Checks, func(b model.Ask) bool { return a.Check == b.Check }):
			return fault{a.Check + " is asked twice", "each check once"}
		}
		x.Checks = append(x.Checks, a)
	}
	return fault{}
}

func setCloses(x *model.StowRule, s string) fault {
	switch s = strings.TrimSpace(s); s {
	case model.Alone, model.BothEnds:
		x.Closes = s
		return fault{}
	}
	return fault{say(s) + " is no way to close a space", "alone or both_ends"}
}

// checkKey is an id that a reading can name: "battery=84;clean=yes".
func checkKey() column[model.Check] {
	c := key("check", func(x *model.Check) *string { return &x.ID })
	plain := c.set
	c.set = func(x *model.Check, s string) fault {
		f := plain(x, s)
		switch {
		case f.wrong != "":
			return f
		case strings.ContainsAny(s, "<>="):
			return fault{say(s) + " has one of < > = in it", "an id without them"}
		case slices.Contains([]string{"flow", "unused", "as_is", "in_anyway"}, strings.ToLower(s)):
			return fault{say(s) + " is a word of the readings", "another id"}
		}
		return fault{}
	}
	return c
}

// setAnswer reads "number 0-100" or words such as "yes/short/no". Only yes
// passes, so it must be one of them.
func setAnswer(x *model.Check, s string) fault {
	x.Answer, x.Number, x.Words, x.Min, x.Max = s, false, nil, 0, 0
	right := "number LOW-HIGH, or words with yes among them such as yes/no"
	s = strings.ToLower(strings.TrimSpace(s))
	if span, ok := strings.CutPrefix(s, "number "); ok {
		low, high, ok := strings.Cut(span, "-")
		least, f := parseNumber(strings.TrimSpace(low))
		greatest, g := parseNumber(strings.TrimSpace(high))
		if !ok || f.wrong != "" || g.wrong != "" || least >= greatest {
			return fault{say(s) + " is no range", right}
		}
		x.Number, x.Min, x.Max = true, least, greatest
		return fault{}
	}
	words := parts(s, "/")
	if !slices.Contains(words, "yes") || strings.ContainsAny(s, ";=") {
		return fault{say(s) + " is no list of answers", right}
	}
	x.Words = words
	return fault{}
}

// setOverride reads "officer", "never" or "officer, never when WORD".
func setOverride(x *model.Check, s string) fault {
	x.Override, x.Never, x.NeverWord = s, false, ""
	who, when, some := strings.Cut(strings.ToLower(s), ",")
	who = strings.TrimSpace(who)
	word, ok := strings.CutPrefix(strings.TrimSpace(when), "never when ")
	word = strings.TrimSpace(word)
	switch {
	case !some && who == "never":
		x.Never = true
	case !some && who == "officer":
	case some && who == "officer" && ok && word != "" && word != "yes" && !strings.ContainsAny(word, ";="):
		x.NeverWord = word
	default:
		return fault{say(s) + " does not say who may override", "officer, never, or officer, never when WORD"}
	}
	return fault{}
}

func setPullQuantity(x *model.Pull, s string) fault {
	x.Quantity = s
	if s = strings.TrimSpace(s); s == "" {
		return fault{}
	}
	_, f := parseWhole(s, 0)
	return f
}

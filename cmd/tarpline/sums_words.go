package main

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"tarpside/model/look"
	"tarpside/model/match"
	"tarpside/model/trail"
)

// A given is the words of a sum: name=value, and plain ones. The first thing
// that is wrong with them stays in err.
type given struct {
	sum   string
	named map[string][]string
	plain []string
	err   error
}

// readSum splits words into names with values and plain ones. Known names
// stand there once, those of many as often as wanted.
func readSum(name string, args []string, known, many string) *given {
	g := &given{sum: name, named: map[string][]string{}}
	for _, a := range args {
		key, value, ok := strings.Cut(a, "=")
		key, value = strings.TrimSpace(key), strings.TrimSpace(value)
		repeats := slices.Contains(strings.Fields(many), key)
		switch {
		case !ok:
			g.plain = append(g.plain, a)
			continue
		case !repeats && !slices.Contains(strings.Fields(known), key):
			g.wrong("there is no %s=", key)
		case value == "":
			g.wrong("something must stand behind %s=", key)
		case !repeats && len(g.named[key]) > 0:
			g.wrong("%s= stands there twice", key)
		}
		g.named[key] = append(g.named[key], value)
	}
	return g
}

// wrong keeps the first misuse.
func (g *given) wrong(format string, args ...any) {
	if g.err == nil {
		g.err = misuse("sums " + g.sum + ": " + fmt.Sprintf(format, args...) + "; try: tarpline sums help " + g.sum)
	}
}

// need is for a name that must be there.
func (g *given) need(key string) {
	if len(g.named[key]) == 0 {
		g.wrong("%s= is missing", key)
	}
}

// noPlain is for sums without plain words.
func (g *given) noPlain() {
	if len(g.plain) > 0 {
		g.wrong("%q is not understood", g.plain[0])
	}
}

// number reads a value, or gives the usual one.
func (g *given) number(key string, usual, low, high float64) float64 {
	if v := g.named[key]; len(v) > 0 {
		return g.figure(key, v[0], low, high)
	}
	return usual
}

// must reads a value that has to be there.
func (g *given) must(key string, low, high float64) float64 {
	g.need(key)
	return g.number(key, 0, low, high)
}

func (g *given) whole(key string, usual, low, high int) int {
	x := g.number(key, float64(usual), float64(low), float64(high))
	if x != math.Trunc(x) {
		g.wrong("%s must be a whole number", key)
	}
	return int(x)
}

func (g *given) figure(what, text string, low, high float64) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || !(x >= low && x <= high) {
		g.wrong("%s is %q, and must be a number from %g to %g", what, text, low, high)
		return low
	}
	return x
}

// word reads one of the words, or gives the usual one.
func (g *given) word(key, usual string, words ...string) string {
	v := g.named[key]
	switch {
	case len(v) == 0:
		return usual
	case !slices.Contains(words, v[0]):
		g.wrong("%s is %q, and must be one of %s", key, v[0], strings.Join(words, ", "))
	}
	return v[0]
}

func (g *given) yes(key string) bool { return g.word(key, "no", "yes", "no") == "yes" }

// trip reads what sums of the trail share.
func (g *given) trip() trail.Trip {
	g.noPlain()
	t := trail.Trip{Path: trail.Path(g.word("path", "", "good", "rough", "steep")), Night: g.yes("night"), Snow: g.yes("snow")}
	t.Km = g.number("km", 0, 0, 500)
	return t
}

// place reads NAME:CHANCE:SIGHT:MINUTES[:unsafe].
func (g *given) place(text string) look.Place {
	w := strings.Split(text, ":")
	if len(w) < 4 || len(w) > 5 || len(w) == 5 && w[4] != "unsafe" || strings.TrimSpace(w[0]) == "" {
		g.wrong("%q must be NAME:CHANCE:SIGHT:MINUTES, with :unsafe behind it if nobody may look there", text)
		return look.Place{}
	}
	name := strings.TrimSpace(w[0])
	return look.Place{ID: name, Name: name, Chance: g.figure("the chance", w[1], 0, 1), Sight: g.figure("the sight", w[2], 0, 1),
		Minutes: g.figure("the minutes", w[3], 0.1, 10000), Unsafe: len(w) == 5}
}

// side reads RIG:FAMILY:N[:SIZE], and gives the words read and near that
// stand behind it.
func (g *given) side(text string) (s match.Side, known []string) {
	w := strings.Split(text, ":")
	for len(w) > 3 && (w[len(w)-1] == "read" || w[len(w)-1] == "near") {
		known, w = append(known, w[len(w)-1]), w[:len(w)-1]
	}
	if len(w) < 3 || len(w) > 4 || w[0] == "" || w[1] == "" {
		g.wrong("%q must be RIG:FAMILY:N, with :SIZE behind it if there is one", text)
		return s, nil
	}
	n := g.figure("the number", w[2], 1, 10000)
	if n != math.Trunc(n) {
		g.wrong("%q needs a whole number", text)
	}
	s = match.Side{Rig: w[0], Family: w[1], N: int(n)}
	if len(w) == 4 {
		s.Size = w[3]
	}
	return s, known
}

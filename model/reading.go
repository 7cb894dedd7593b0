package model

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// An Answer is one key=answer of a reading.
type Answer struct {
	Check  string
	Word   string  // as given, in lower case
	Number float64 // for a check that is a number
}

// FlowKey is the one key of a reading that is no check: litres a minute.
const FlowKey = "flow"

// The words that a stow may have among its answers.
const (
	WordUnused   = "unused"    // it never left the tarp
	WordAsIs     = "as_is"     // home as it is
	WordInAnyway = "in_anyway" // into a closed slot
)

// ParseReading reads key=answer joined by ";" against the department's checks.
// stow allows the three words. A key without an answer is left out. The error
// says which part cannot be read and what it may be.
func ParseReading(d *Department, reading string, stow bool) ([]Answer, error) {
	var out []Answer
	var keys []string
	unused := false
	for _, part := range Words(reading) {
		key, word, eq := strings.Cut(part, "=")
		key, word = strings.TrimSpace(key), strings.TrimSpace(word)
		if !eq {
			if stow && (key == WordUnused || key == WordAsIs || key == WordInAnyway) {
				unused = unused || key == WordUnused
				continue
			}
			return nil, fmt.Errorf("%q is no answer: an answer is written check=answer", part)
		}
		if slices.Contains(keys, key) {
			return nil, fmt.Errorf("%q is answered twice", key)
		}
		keys = append(keys, key)
		a, err := parseAnswer(d, key, word)
		if err != nil {
			return nil, err
		}
		if word != "" {
			out = append(out, a)
		}
	}
	if unused && len(out) > 0 {
		return nil, fmt.Errorf("%q takes no answers beside it", WordUnused)
	}
	return out, nil
}

func parseAnswer(d *Department, key, word string) (Answer, error) {
	a := Answer{Check: key, Word: word}
	lo, hi := 0.0, 100.0
	if key != FlowKey {
		c := d.Check(key)
		if c == nil {
			return a, fmt.Errorf("no check is called %q", key)
		}
		a.Check = c.ID
		if !c.Number {
			if word != "" && !slices.Contains(c.Words, word) && word != c.NeverWord {
				return a, fmt.Errorf("%s cannot be %q: it is %s", key, word, strings.Join(c.Words, ", "))
			}
			return a, nil
		}
		lo, hi = c.Min, c.Max
	}
	if word == "" {
		return a, nil
	}
	n, ok := plainNumber(word)
	if !ok {
		return a, fmt.Errorf("%s cannot be %q: it is a number from %g to %g", key, word, lo, hi)
	}
	if n > hi && strings.HasSuffix(word, "0") && n/10 >= lo && n/10 <= hi {
		return a, fmt.Errorf("%s cannot be %s: it is from %g to %g. Did you mean %g?", key, word, lo, hi, n/10)
	}
	if n < lo || n > hi {
		return a, fmt.Errorf("%s cannot be %s: it is from %g to %g", key, word, lo, hi)
	}
	a.Number = n
	return a, nil
}

// plainNumber reads digits with at most one point, nothing else.
func plainNumber(word string) (float64, bool) {
	digits, points := 0, 0
	for _, r := range word {
		switch {
		case r >= '0' && r <= '9':
			digits++
		case r == '.':
			points++
		default:
			return 0, false
		}
	}
	if digits == 0 || points > 1 {
		return 0, false
	}
	n, err := strconv.ParseFloat(word, 64)
	return n, err == nil
}

// HasWord tells whether one of the words stands in a reading, whatever else
// does.
func HasWord(reading, word string) bool { return slices.Contains(Words(reading), word) }

// Find gives the answer to a check, if there is one.
func Find(answers []Answer, check string) (Answer, bool) {
	for _, a := range answers {
		if strings.EqualFold(a.Check, check) {
			return a, true
		}
	}
	return Answer{}, false
}

// KitState is how complete a kit is.
type KitState int

// The three states of a kit.
const (
	Complete KitState = iota
	ShortUsable
	NotUsable
)

// KitState counts what is in a kit against what it owns. Consumables do not
// count; a kit inside counts with its own state.
func (s *State) KitState(kit int) KitState {
	in := Place{Kind: InKit, Name: s.Dept.Items[kit].ID}
	worst := Complete
	for _, i := range s.Dept.Inside(kit) {
		it := &s.Dept.Items[i]
		if it.Kind == Consumable {
			continue
		}
		state := Complete
		switch n := s.lines[i].N(in); {
		case n < it.Least():
			state = NotUsable
		case n < it.Quantity:
			state = ShortUsable
		}
		if it.Kind == Kit && state == Complete {
			state = s.KitState(i)
		}
		worst = max(worst, state)
	}
	return worst
}

// CountCheck is the check that counts the pieces of a kit.
const CountCheck = "count"

// Passes judges an answer to a check of the line.
func (s *State) Passes(line int, a Answer) bool {
	ask, _ := s.Dept.Items[line].Ask(a.Check)
	c := s.Dept.Check(a.Check)
	switch {
	case c == nil:
		return false
	case c.Number:
		return !ask.HasLimit || a.Number >= ask.Limit
	case strings.EqualFold(a.Check, CountCheck) && len(s.Dept.Inside(line)) > 0:
		k := s.KitState(line)
		return a.Word == "yes" && k != NotUsable || a.Word == "short" && k == ShortUsable
	default:
		return a.Word == "yes"
	}
}

// Failing lists what stands against a line by the answers given: those that
// fail, and the checks with no answer. The words are "dry=no" and "clean
// unanswered".
func (s *State) Failing(line int, answers []Answer) (checks, words []string) {
	for _, ask := range s.Dept.Items[line].Checks {
		switch a, ok := Find(answers, ask.Check); {
		case !ok:
			checks, words = append(checks, ask.Check), append(words, ask.Check+" unanswered")
		case !s.Passes(line, a):
			checks, words = append(checks, ask.Check), append(words, ask.Check+"="+a.Word)
		}
	}
	return checks, words
}

// reads tells whether the verb's reading is read for answers.
func (v Verb) reads() bool {
	switch v {
	case CheckIt, Stow, Seen, Recharge, Clean, BringBack:
		return true
	}
	return false
}

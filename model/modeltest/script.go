package modeltest

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
)

// Script runs a script on the log and returns what differs, or "". A row is
// an act and, after "->", the whole reply: "hand LIGHT tarp>at:V1 -> ok".
// dev= names another device and seen= the last row of the script that it had
// received. A row ":" holds the board to something: ": LIGHT at:V1=1 doubt=0".
func Script(l *Log, script string) string {
	var rows []string // the device of each row so far
	base := l.State.Seen()
	for _, text := range strings.Split(script, "\n") {
		text, _, _ = strings.Cut(text, "#")
		if text = strings.TrimSpace(text); text == "" {
			continue
		}
		if fact, ok := strings.CutPrefix(text, ":"); ok {
			if bad := Holds(l.State, l.Scene, fact); bad != "" {
				return fmt.Sprintf("%s\n  %s", text, bad)
			}
			continue
		}
		text, want, _ := strings.Cut(text, "->")
		e, err := entry(l, text, base, &rows)
		if err != nil {
			return err.Error()
		}
		got := l.Do(e).Reply
		words := strings.Fields(want)
		reasons := slices.Clone(got.Reasons)
		slices.Sort(reasons)
		slices.Sort(words[min(1, len(words)):])
		if said := append([]string{string(got.Word)}, reasons...); !slices.Equal(said, words) {
			return fmt.Sprintf("%s\n  want %v\n  got  %v (%s)", text, words, said, got.Text)
		}
		if err := Check(l.State); err != nil {
			return fmt.Sprintf("%s\n  %v", text, err)
		}
	}
	return ""
}

// entry makes the entry of a script's row.
func entry(l *Log, text string, base model.Vector, rows *[]string) (model.Entry, error) {
	var e model.Entry
	device, seen, plain := l.Device, len(*rows), ""
	for _, w := range strings.Fields(text) {
		if d, ok := strings.CutPrefix(w, "dev="); ok {
			device = d
		} else if s, ok := strings.CutPrefix(w, "seen="); ok {
			if _, err := fmt.Sscan(s, &seen); err != nil {
				return e, fmt.Errorf("%q: %w", text, err)
			}
		} else {
			plain += w + " "
		}
	}
	a, err := Read(plain)
	if err != nil {
		return e, err
	}
	e.Act, e.Seen, e.Stamp.Device = a, base.Clone(), device
	for i, d := range *rows {
		if i < seen || d == device {
			e.Seen[d]++
		}
	}
	if a.Verb == model.Open {
		e.Takes, e.Scene = []string{l.Scene}, fmt.Sprintf("scene %d", len(*rows))
	}
	*rows = append(*rows, device)
	return e, nil
}

// Holds tells how the board differs from a fact such as
// "LIGHT at:V1=1 doubt=0 tags=0/0 open=- contest=- extra=0 found=0 past=no
// holder@at:V1=Crew".
func Holds(s *model.State, scene, fact string) string {
	words := strings.Fields(fact)
	i := s.Dept.ItemIndex(words[0])
	if i < 0 {
		return "no line is called " + words[0]
	}
	l := s.Line(i)
	for _, w := range words[1:] {
		at := strings.LastIndex(w, "=")
		if at < 0 {
			return w + " is no fact"
		}
		key, want := w[:at], w[at+1:]
		got := ""
		switch place, holder := strings.CutPrefix(key, "holder@"); {
		case holder:
			p, err := s.Resolve(place, i, scene)
			if got = s.RealHolder(i, p); err != nil {
				return err.Error()
			}
		case key == "doubt":
			got = fmt.Sprint(l.Doubt)
		case key == "tags":
			got = fmt.Sprintf("%d/%d", l.TaggedHome, l.TaggedOut)
		case key == "open":
			got = dash(strings.Join(l.Open, ","))
		case key == "contest":
			if got = "-"; l.Contest != nil {
				got = l.Contest.Place.String()
			}
		case key == "extra":
			got = fmt.Sprint(s.Extra(i, scene))
		case key == "found":
			got = fmt.Sprint(s.FoundAtCount(i))
		case key == "ready":
			got = fmt.Sprint(s.ReadyNow(i))
		case key == "past":
			got = map[bool]string{true: "yes", false: "no"}[s.IsPast(i, scene)]
		default:
			p, err := s.Resolve(key, i, scene)
			if got = fmt.Sprint(l.N(p)); err != nil {
				return err.Error()
			}
		}
		if got != want {
			return fmt.Sprintf("%s %s is %s", words[0], key, got)
		}
	}
	return ""
}

func dash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

package main

import (
	"fmt"
	"strings"
	"time"

	"tarpside/board"
	"tarpside/model"
	"tarpside/model/judge"
)

// A story tells the taps of a scene, line by line.
type story struct {
	c      *call
	p      *played
	d      *model.Department
	lines  []string
	minute int    // of the line before
	who    string // who spoke in it
}

const storyHead = 26 // letters before the words: minute, clock, name

// tap tells one tap: what was done, its notes, and the replies that matter.
func (s *story) tap(rows []board.Replied) {
	for len(rows) > 0 {
		n := 1
		for n < len(rows) && together(rows[0], rows[n]) {
			n++
		}
		s.group(rows[:n])
		rows = rows[n:]
	}
}

// together tells whether two rows of a tap are told in one sentence.
func together(a, b board.Replied) bool {
	x, y := a.Entry.Act, b.Entry.Act
	if x.Verb != model.Look {
		x.Reading = y.Reading
	}
	x.Item, x.Quantity, x.Note = y.Item, y.Quantity, y.Note
	if x.Verb == model.Stow || x.Verb == model.StowTagged { // each into its own home, wherever that is
		x.To, x.From = y.To, y.From
	}
	return x == y && a.Entry.Taken() && b.Entry.Taken()
}

func (s *story) group(rows []board.Replied) {
	first := rows[0]
	if first.Entry.Verb == model.Open || first.Entry.Verb == model.ClearUp {
		s.part(first)
	}
	s.say(first, s.sentence(rows))
	said := ""
	for _, r := range rows {
		e := &r.Entry
		if e.Note != "" && e.Note != said && e.Verb != model.Open && e.Verb != model.Note && e.Verb != model.ClearUp {
			said = e.Note
			for _, l := range hang(strings.Repeat(" ", storyHead+2), said) {
				s.lines = append(s.lines, s.c.ink(faint, l))
			}
		}
		if e.Reply.Word != model.OK {
			s.reply(e, len(rows) > 1)
		}
	}
}

// part heads a part of the night.
func (s *story) part(r board.Replied) {
	head := "The call"
	if r.Entry.Verb == model.ClearUp {
		head = "The put-back"
	}
	s.lines = append(s.lines, "", s.c.ink(bold, head), "", s.c.ink(faint, "min  clock  who           what"))
	s.minute, s.who = -1, ""
}

// say adds a line; minute, clock and name stand only where they change.
func (s *story) say(r board.Replied, words string) {
	when, who := strings.Repeat(" ", 10), people(s.d, r.Entry.By)
	if i := strings.LastIndexByte(who, ' '); i >= 0 {
		who = who[i+1:] // on the radio it is the last name
	}
	name := who
	if r.Row.Minute != s.minute {
		at := s.p.start.Add(time.Duration(r.Row.Minute) * time.Minute)
		when = fmt.Sprintf("%3d  %s", r.Row.Minute, at.Format("15:04"))
	} else if who == s.who {
		name = ""
	}
	s.minute, s.who = r.Row.Minute, who
	s.lines = append(s.lines, hang(fmt.Sprintf("%-10s  %-12s  ", when, name), words)...)
}

// reply tells what the log answered, where that was more than yes.
func (s *story) reply(e *model.Entry, named bool) {
	words := e.Reply.Text
	if e.Taken() { // the moves have been told
		parts := strings.Split(words, "; ")
		skip := len(e.Moves)
		if skip > 6 {
			skip = 7
		}
		words = strings.Join(parts[min(skip, len(parts)):], "; ")
	}
	if it := s.d.Item(e.Item); it != nil && named {
		words = it.Name + ": " + words
	}
	if words == "" {
		words = strings.ReplaceAll(strings.Join(e.Reply.Reasons, ", "), "_", " ")
	}
	how := amber
	if e.Reply.Word != model.Warned {
		how = red
	}
	for _, l := range hang(strings.Repeat(" ", storyHead-2)+"> "+string(e.Reply.Word)+": ", words) {
		s.lines = append(s.lines, s.c.ink(how, l))
	}
}

// items names the pieces of some rows.
func (s *story) items(rows []board.Replied) string {
	var out []string
	for _, r := range rows {
		e := &r.Entry
		it := s.d.Item(e.Item)
		if it == nil {
			out = append(out, e.Item)
			continue
		}
		words := count(it, max(1, e.Quantity))
		if e.Verb == model.Count {
			words = fmt.Sprintf("%d %s", e.Quantity, it.Name)
		}
		for _, mark := range []struct{ reason, words string }{{judge.TwoPerson, "two people"},
			{judge.Overridden, "an officer let it pass"}, {judge.ShortUsable, "short, but usable"}} {
			if e.Reply.Has(mark.reason) {
				words += " (" + mark.words + ")"
			}
		}
		out = append(out, words)
	}
	return strings.Join(out, dot)
}

// place is a place of an act in words.
func (s *story) place(text string) string {
	p, err := model.ParsePlace(text)
	if err != nil {
		return text
	}
	return judge.Where(s.d, p)
}

// dot stands between things of which each may have commas of its own.
const dot = " · "

// answers is a reading in words: "oxygen 1950, flow 15".
func answers(reading string) string {
	return strings.ReplaceAll(strings.ReplaceAll(reading, "=", " "), ";", ", ")
}

// held adds who holds it.
func (s *story) held(e *model.Entry) string {
	if e.Holder == "" {
		return ""
	}
	return ", with " + people(s.d, e.Holder)
}

// sentence says what some rows of one verb did.
func (s *story) sentence(rows []board.Replied) string {
	e := &rows[0].Entry
	if words, ok := s.aboutScene(e); ok {
		return words
	}
	items, to, from := s.items(rows), s.place(e.To), s.place(e.From)
	switch e.Verb {
	case model.PullOff:
		return "off the rig: " + items
	case model.Direct:
		return "straight off the rig " + to + s.held(e) + ": " + items
	case model.Hand, model.MoveTo:
		return "now " + to + s.held(e) + ": " + items
	case model.Return:
		return "back on the tarp from " + strings.TrimPrefix(from, "at ") + ": " + items
	case model.TakeOut, model.Unstow:
		return "out again, " + to + ": " + items
	case model.Use:
		return "used: " + items
	case model.Handover, model.Lend, model.Locate, model.Carry, model.Match:
		return s.elsewhere(e, items, to)
	case model.Bag:
		return "bagged and sealed: " + items + " (" + answers(e.Reading) + ")"
	case model.Charge:
		return "on the charger: " + items
	case model.Count:
		return "counted " + strings.Replace(from, "home", "on the rig", 1) + ": " + items
	case model.Seen, model.Found, model.Settle, model.Correct:
		return map[model.Verb]string{model.Seen: "seen ", model.Found: "found, now ", model.Settle: "settled by eye, ",
			model.Correct: "corrected, really "}[e.Verb] + to + s.held(e) + ": " + items
	case model.CheckIt:
		return "checked: " + items + ", " + answers(e.Reading)
	case model.Tag:
		return "out of service: " + items + " (" + answers(e.Reading) + ")"
	case model.Override:
		return "officer lets it pass: " + items + ", " + answers(e.Reading)
	case model.Stow:
		return "home: " + items
	case model.StowTagged:
		return "home, out of service: " + items
	case model.TakeBack:
		return "taken back, was " + from + ": " + items
	case model.Look:
		return "looks for " + items + ": " + strings.TrimPrefix(strings.Split(e.Reading, ";")[0], "step=")
	case model.StopLook:
		return "search closed, lost: " + items
	}
	return strings.ReplaceAll(string(e.Verb), "_", " ") + ": " + items
}

// elsewhere are the verbs after which others have the pieces.
func (s *story) elsewhere(e *model.Entry, items, to string) string {
	switch {
	case e.Verb == model.Carry:
		return "carried home for others " + to + ": " + items
	case e.Verb == model.Match && e.From == "":
		return "perhaps swapped with " + s.d.Item(e.Reading).Name + " of " + s.d.Item(e.Reading).Rig + ": " + items
	case e.Verb == model.Match:
		return "short here, extra there, so " + to + ": " + items
	case e.Verb == model.Lend:
		return "lent, " + to + ": " + items
	}
	return "now " + to + ": " + items
}

// aboutScene are the verbs that are about no piece.
func (s *story) aboutScene(e *model.Entry) (string, bool) {
	rig := party(s.d, e.Rig)
	switch e.Verb {
	case model.Open:
		return "the scene opens. " + e.Note, true
	case model.Note:
		return "notes: " + e.Note, true
	case model.Arrive:
		return rig + " arrives", true
	case model.Relieve:
		return people(s.d, e.Holder) + " takes over staging", true
	case model.ClearUp:
		return "clear-up starts", true
	case model.Release:
		return rig + " wants to go", true
	case model.Accept:
		return "signs for what " + rig + " leaves here", true
	case model.Leave:
		return rig + " leaves", true
	case model.Vouch:
		return "gives their word that all of " + rig + " is aboard", true
	case model.Close:
		return "the scene is closed", true
	}
	return "", false
}

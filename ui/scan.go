package ui

import (
	"time"

	"fyne.io/fyne/v2"
)

// A Scanner tells a reader of bar codes, which types as a keyboard does, from
// a person: a reader is faster than any hand, and ends a code with Return or
// Tab. It has no clock of its own. Characters are held until it is known who
// typed them, so that nothing of a code is ever seen as typing.
type Scanner struct {
	Gap   time.Duration // the longest between two characters of a code; nought is 40 ms
	Least int           // characters of the shortest code; nought is 2

	held []rune
	last time.Time
}

const (
	scanGap   = 40 * time.Millisecond // a hand at 120 words a minute takes 100 ms a key
	scanLeast = 2                     // "V1"
)

// Rune takes a character that came at a time. It returns what was held and is
// now known to be typed by a person.
func (s *Scanner) Rune(r rune, at time.Time) (typed string) {
	typed = s.Quiet(at)
	s.held, s.last = append(s.held, r), at
	return typed
}

// Key takes a key that writes nothing. It returns the code that it ended, or
// else what was held and is now known to be typed.
func (s *Scanner) Key(name fyne.KeyName, at time.Time) (code, typed string) {
	typed = s.Quiet(at)
	switch name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeyTab:
		least := s.Least
		if least == 0 {
			least = scanLeast
		}
		if len(s.held) >= least {
			return s.take(), ""
		}
	case fyne.KeyEscape, fyne.KeyBackspace, fyne.KeyDelete, fyne.KeyLeft, fyne.KeyRight, fyne.KeyUp, fyne.KeyDown:
	default:
		return "", typed // the key of a character, or shift before one
	}
	return "", typed + s.take()
}

// Quiet returns what is held if no more of a code can follow it by now.
func (s *Scanner) Quiet(at time.Time) (typed string) {
	if at.Sub(s.last) <= s.gap() {
		return ""
	}
	return s.take()
}

func (s *Scanner) gap() time.Duration {
	if s.Gap == 0 {
		return scanGap
	}
	return s.Gap
}

func (s *Scanner) take() string {
	text := string(s.held)
	s.held = s.held[:0]
	return text
}

package model

import "slices"

// A Stack is so many pieces of a line at one place. Holder is who the last
// row that brought pieces there named.
type Stack struct {
	Place  Place  `json:"p"`
	N      int    `json:"n"`
	Holder string `json:"h,omitempty"`
}

// A Line is where the pieces of one item are and what is known of them. A
// Line that is in a State is never changed; an entry makes a new one.
type Line struct {
	Stacks     []Stack     `json:"s"`
	Open       []string    `json:"o,omitempty"` // checks that failed or went unasked
	Doubt      int         `json:"d,omitempty"` // untagged pieces in the home place not known to pass
	DoubtWords []string    `json:"dw,omitempty"`
	Waved      bool        `json:"w,omitempty"` // every doubt was waved through by an officer
	TaggedHome int         `json:"th,omitempty"`
	TaggedOut  int         `json:"to,omitempty"`
	TagWords   string      `json:"tw,omitempty"`
	Contest    *Contest    `json:"c,omitempty"`
	Scenes     []lineScene `json:"sc,omitempty"`
	Peak       int         `json:"pk,omitempty"` // the most pieces away at once in this scene

	epoch   int   // the entry that made this value
	touched int   // the last taken entry that was about the line
	undo    *undo // how to take the last move back
	hist    *step // every move of the line, newest first
}

// lineScene is what one scene remembers of a line.
type lineScene struct {
	Scene  string   `json:"s"`
	Past   bool     `json:"p,omitempty"` // it was past the tarp
	Passed []string `json:"k,omitempty"` // checks passed since it last went out
	Extra  int      `json:"x,omitempty"` // seen at a count beyond the books
	Found  int      `json:"f,omitempty"` // used pieces found only by counting
}

// A Contest is two claims about one line by devices cut off from each other.
// Place is where the pieces are shown.
type Contest struct {
	Place  Place   `json:"p"`
	Device string  `json:"d"` // who wrote the contested entry, and its number there
	N      int     `json:"n"`
	Claims []Claim `json:"c,omitempty"` // the later claim first
	Told   bool    `json:"t,omitempty"` // the reply to the contested entry said so; else it came to light when two logs met
}

// A Claim is where one device said the pieces went.
type Claim struct {
	Place  Place  `json:"p"`
	Device string `json:"d"`
	N      int    `json:"n"` // the entry's number on its device
	By     string `json:"b,omitempty"`
	Holder string `json:"h,omitempty"`
	At     int64  `json:"a,omitempty"` // Unix ms
}

// step is one move of a line in its history.
type step struct {
	prev  *step
	n     int
	from  Place
	claim Claim // where they went, and who says so
}

// undo keeps the lines as they stood before a move.
type undo struct {
	move   *step
	scene  string
	entry  int
	before []saved
}

type saved struct {
	line int
	was  *Line
}

// N is how many pieces are at the place itself.
func (l *Line) N(p Place) int {
	for i := range l.Stacks {
		if l.Stacks[i].Place == p {
			return l.Stacks[i].N
		}
	}
	return 0
}

// Holder is who has the pieces at the place.
func (l *Line) Holder(p Place) string {
	for i := range l.Stacks {
		if l.Stacks[i].Place == p {
			return l.Stacks[i].Holder
		}
	}
	return ""
}

// Tagged is how many pieces are out of service.
func (l *Line) Tagged() int { return l.TaggedHome + l.TaggedOut }

// IsOpen tells whether the check is open.
func (l *Line) IsOpen(check string) bool { return slices.Contains(l.Open, check) }

// out counts the pieces that are not in the home place, used or lost.
func (l *Line) out(home Place) int {
	n := 0
	for _, s := range l.Stacks {
		if s.Place != home && !s.Place.gone() {
			n += s.N
		}
	}
	return n
}

// take removes pieces from a place; the caller has seen that they are there.
func (l *Line) take(p Place, n int) {
	for i := range l.Stacks {
		if l.Stacks[i].Place == p {
			if l.Stacks[i].N -= n; l.Stacks[i].N == 0 {
				l.Stacks = slices.Delete(l.Stacks, i, i+1)
			}
			return
		}
	}
}

// put adds pieces to a place; they are with the holder from now on.
func (l *Line) put(p Place, n int, holder string) {
	for i := range l.Stacks {
		if l.Stacks[i].Place == p {
			l.Stacks[i].N += n
			l.Stacks[i].Holder = holder
			return
		}
	}
	l.Stacks = append(l.Stacks, Stack{p, n, holder})
}

// scene reads what a scene remembers of the line.
func (l *Line) scene(id string) lineScene {
	for _, s := range l.Scenes {
		if s.Scene == id {
			return s
		}
	}
	return lineScene{Scene: id}
}

// setScene writes what a scene remembers of the line.
func (l *Line) setScene(v lineScene) {
	l.Scenes = slices.Clone(l.Scenes)
	for i := range l.Scenes {
		if l.Scenes[i].Scene == v.Scene {
			l.Scenes[i] = v
			return
		}
	}
	l.Scenes = append(l.Scenes, v)
}

// addDoubt puts n more pieces in doubt, with the answers that did not pass.
func (l *Line) addDoubt(n int, waved bool, words []string) {
	if n <= 0 {
		return
	}
	if l.Doubt == 0 {
		l.DoubtWords, l.Waved = nil, true
	}
	l.Doubt += n
	l.Waved = l.Waved && waved
	l.DoubtWords = union(l.DoubtWords, words...)
}

// Unasked tells whether pieces are in doubt because a check had no answer.
func (l *Line) Unasked(check string) bool {
	return l.Doubt > 0 && slices.Contains(l.DoubtWords, check+" unanswered")
}

// setOpen opens or closes a check.
func (l *Line) setOpen(check string, open bool) {
	if open {
		l.Open = union(l.Open, check)
	} else {
		l.Open = without(l.Open, check)
	}
}

// union adds words that are not in the list yet, without changing the list.
func union(list []string, words ...string) []string {
	out := slices.Clone(list)
	for _, w := range words {
		if !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}

// without takes a word out, without changing the list.
func without(list []string, word string) []string {
	if !slices.Contains(list, word) {
		return list
	}
	return slices.DeleteFunc(slices.Clone(list), func(w string) bool { return w == word })
}

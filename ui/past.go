package ui

import (
	"slices"

	"tarpside/board"
	"tarpside/model"
)

// catchUp takes over the newest picture of the board.
func (sh *Shell) catchUp() {
	if p := sh.opts.Board.Picture(); p.Gen > sh.pic.Gen {
		sh.pic = sh.withPast(p)
	}
}

// withPast is a picture with the entries of its scenes that a balance covers.
// A window that is opened after a scene was closed then knows since when pieces
// are with others, what was promised, what is held and what was read, as the
// one did that closed it. Entries that cannot be read are left out: the stock
// is right without.
func (sh *Shell) withPast(p *board.Picture) *board.Picture {
	var past []model.Entry
	for _, sc := range p.State.Scenes() {
		known := func(e model.Entry) bool { return e.Scene == sc.ID && e.Verb == model.Open }
		if sc.ID == "" || slices.ContainsFunc(p.Entries, known) {
			continue
		}
		if sh.past == nil || sh.past.scene != sc.ID {
			got, err := sh.opts.Board.EntriesOf(sc.ID)
			if err != nil {
				continue
			}
			sh.past = &pastScene{sc.ID, got}
		}
		past = append(past, sh.past.entries...)
	}
	if len(past) == 0 {
		return p
	}
	whole := *p
	whole.Entries = nil
	for _, e := range model.Sorted(append(past, p.Entries...)) {
		whole.Entries = append(whole.Entries, *e)
	}
	return &whole
}

// pastScene are the entries of a closed scene, read once.
type pastScene struct {
	scene   string
	entries []model.Entry
}

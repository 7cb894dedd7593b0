package ui

import (
	"iter"
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
// one did that closed it.
func (sh *Shell) withPast(p *board.Picture) *board.Picture {
	var past []model.Entry
	for _, sc := range p.State.Scenes() {
		known := func(e model.Entry) bool { return e.Scene == sc.ID && e.Verb == model.Open }
		if sc.ID == "" || slices.ContainsFunc(p.Entries, known) {
			continue
		}
		past = append(past, sh.before(sc.ID)...)
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

// history is every entry that may tell of a piece which is still away: of the
// scenes that went before, the oldest first, then of the picture. A loan or a
// hold outlasts the scene it was made in.
func (n *now) history() iter.Seq[*model.Entry] {
	var before [][]model.Entry
	for _, sc := range n.s.Scenes() {
		for _, id := range slices.Backward(sc.Took) {
			before = append(before, n.Shell.before(id))
		}
	}
	return func(yield func(*model.Entry) bool) {
		for _, entries := range append(before, n.pic.Entries) {
			for i := range entries {
				if !yield(&entries[i]) {
					return
				}
			}
		}
	}
}

// before are the entries of a scene that is over, read once. Those that cannot
// be read are left out: the stock is right without.
func (sh *Shell) before(scene string) []model.Entry {
	got, ok := sh.older[scene]
	if !ok {
		var err error
		if got, err = sh.opts.Board.EntriesOf(scene); err != nil {
			return nil
		}
		if sh.older == nil {
			sh.older = map[string][]model.Entry{}
		}
		sh.older[scene] = got
	}
	return got
}

package board

import (
	"io"
	"time"

	"tarpside/board/journal"
	"tarpside/model"
)

// Entries are all that the file holds, those of closed scenes too, as they lie
// in it.
func (b *Board) Entries() ([]model.Entry, error) {
	var all []model.Entry
	for e, err := range b.ledger.Entries(0) {
		if err != nil {
			return nil, err
		}
		all = append(all, e)
	}
	return all, nil
}

// EntriesOf are the entries of one scene in the order of their stamps, those
// that a balance covers too.
func (b *Board) EntriesOf(scene string) ([]model.Entry, error) { return b.ledger.ByScene(scene) }

// Journal writes the whole log as a double-entry journal, with the days of a
// time zone.
func (b *Board) Journal(w io.Writer, in *time.Location) error {
	all, err := b.Entries()
	if err != nil {
		return err
	}
	return journal.Write(w, all, in)
}

package board

import (
	"io"
	"time"

	"tarpside/board/paper"
	"tarpside/model"
)

// Journal writes the whole log as a double-entry journal, with the days of a
// time zone.
func (b *Board) Journal(w io.Writer, in *time.Location) error {
	var all []model.Entry
	for e, err := range b.ledger.Entries(0) {
		if err != nil {
			return err
		}
		all = append(all, e)
	}
	return paper.Journal(w, all, in)
}

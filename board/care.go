package board

import (
	"errors"
	"fmt"
	"io/fs"
	"reflect"

	"tarpside/board/ledger"
	"tarpside/board/stores"
	"tarpside/model"
)

// putBalance stores the fold of everything that the file holds.
func (b *Board) putBalance(s *model.State) error {
	blob, err := s.MarshalBalance()
	if err != nil {
		return err
	}
	n, err := b.ledger.Count()
	if err != nil {
		return err
	}
	return b.ledger.PutBalance(ledger.Balance{Key: "latest", Covers: n, Stamp: b.clock, Vector: s.Seen(), Blob: blob})
}

// LoadStores changes the inventory to what the tables of a folder say, by one
// entry. With dry it changes nothing. It returns what changes; problems of the
// tables come back as stores.Problems, and then nothing was changed.
func (b *Board) LoadStores(fsys fs.FS, by string, dry bool) ([]stores.Change, error) {
	d, problems := stores.Read(fsys)
	if err := problems.Err(); err != nil {
		return nil, err
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	patch, changes := stores.Diff(b.Picture().State.Wanted(), d)
	if dry || len(changes) == 0 {
		return changes, nil
	}
	e := model.Entry{Act: model.Act{Verb: model.Stores, By: by, Quantity: model.Blank}, Scene: b.Picture().Scene, Stores: &patch}
	return changes, b.log([]model.Entry{e})
}

// SaveStores writes the tables of the inventory to a folder.
func (b *Board) SaveStores(dir string) error { return stores.Write(dir, b.Picture().State.Wanted()) }

// Backup writes a copy of the file, while it is in use if need be.
func (b *Board) Backup(path string) error { return b.ledger.Backup(path) }

// A Finding is one thing that Verify checked.
type Finding struct {
	OK    bool
	Words string
}

// Verify recomputes everything from the entries and says what it checked.
func (b *Board) Verify() ([]Finding, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	report, err := b.ledger.Check()
	if err != nil {
		return nil, err
	}
	var out []Finding
	add := func(ok bool, format string, args ...any) {
		out = append(out, Finding{ok, fmt.Sprintf(format, args...)})
	}
	for _, p := range report.Problems {
		add(false, "%s", p)
	}
	add(len(report.Problems) == 0, "The file is whole, and all %d entries can be read", report.Entries)
	var all []model.Entry
	for e, err := range b.ledger.Entries(0) {
		if err != nil {
			return out, err
		}
		all = append(all, e)
	}
	s := model.Fold(all)
	same := reflect.DeepEqual(s.Proof(), b.Picture().State.Proof()) && reflect.DeepEqual(s.EndState(), b.Picture().State.EndState())
	add(same, "Folded again from the first entry, the board is the same as on screen")
	bad := s.Unbalanced()
	for _, i := range bad {
		add(false, "%s: its places do not add up to %d", s.Dept.Items[i].ID, s.Dept.Items[i].Quantity)
	}
	add(len(bad) == 0, "Every one of the %d lines adds up to what its rig owns", len(s.Dept.Items))
	if balance, ok, err := b.ledger.LatestBalance(); err == nil && ok {
		kept, fits := model.RestoreBalance(balance.Blob)
		if fits {
			for e, err := range b.ledger.Entries(balance.Covers) {
				if err != nil {
					return out, err
				}
				kept.Apply(&e)
			}
			fits = reflect.DeepEqual(kept.Proof(), s.Proof())
		}
		add(fits, "The balance kept at the last close gives the same")
	}
	return out, nil
}

// ErrExists is the error for a target that is there already.
var ErrExists = errors.New("there is a file already")

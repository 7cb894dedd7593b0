package board

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/google/uuid"

	"tarpside/board/ledger"
	"tarpside/board/stick"
	"tarpside/model"
)

// WriteStick writes the whole log to one file, to be taken in on another
// tablet, and returns how many entries there are in it. What is there under
// that name is replaced whole.
func (b *Board) WriteStick(path string) (entries int, err error) {
	err = writeWhole(path, func(w io.Writer) (err error) {
		entries, err = stick.Write(w, b.Picture().Device, b.ledger.Entries(0))
		return err
	})
	var t *ledger.Trouble
	if err != nil && !errors.As(err, &t) {
		err = &ledger.Trouble{What: fmt.Sprintf("%s could not be written.", filepath.Base(path)), Safe: "The log is as it was.",
			Do: "Check that the stick is in and has room, then do it again.", Err: err}
	}
	return entries, err
}

// A StickTaken is what came of taking in a file of another tablet.
type StickTaken struct {
	From         string // the tablet that wrote it
	Entries, New int
	Waiting      int // entries of the log that wait for earlier ones of their tablet
}

// String says what came of it.
func (t StickTaken) String() string {
	out := fmt.Sprintf("%d of its %d entries were new here; it was written by %s.", t.New, t.Entries, t.From)
	if t.New == 0 {
		out = fmt.Sprintf("All of its %d entries were here already; it was written by %s. Nothing was changed.", t.Entries, t.From)
	}
	if t.Waiting > 0 {
		out += fmt.Sprintf(" %d entries wait for earlier ones of their tablet, and count once these come.", t.Waiting)
	}
	return out
}

// TakeStick takes in a file that WriteStick made, all of it or, with an error,
// nothing: one that is damaged, foreign, or of another department is refused.
// Taken in again it changes nothing.
func (b *Board) TakeStick(path string) (t StickTaken, err error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	here, err := b.mine()
	if err != nil {
		return t, err
	}
	f, err := os.Open(path)
	if err != nil {
		return t, refused(path, "cannot be opened", "Check the name, and that the stick is in, then do it again.", err)
	}
	defer f.Close()
	akin := len(here.first) == 0
	t.From, err = stick.Read(f, func(e model.Entry) error { // first all of it, for its sum
		t.Entries++
		akin = akin || here.first[e.ID]
		return nil
	})
	switch {
	case err != nil:
		return StickTaken{}, refused(path, "is not taken in", "Write it again on the other tablet, and take that one.", err)
	case t.Entries > 0 && !akin:
		return StickTaken{}, refused(path, "is of another department, or of a log that was begun apart from this one",
			"To join two tablets, let one of them begin with a new file and take in what the other wrote.", nil)
	}
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return StickTaken{}, refused(path, "cannot be read again", "Take it in once more.", err)
	}
	var fresh []model.Entry
	_, err = stick.Read(f, func(e model.Entry) error {
		if there, known := here.ids[e.Stamp.Device][e.N()]; known && there != e.ID {
			return fmt.Errorf("two tablets have written under the name %s", e.Stamp.Device)
		} else if !known {
			here.add(&e)
			fresh = append(fresh, e)
		}
		return nil
	})
	if err != nil {
		return StickTaken{}, refused(path, "is not taken in", "Keep both files, and ask for help before you go on with either.", err)
	}
	t.New, err = b.add(fresh)
	t.Waiting = b.Picture().Waiting
	return t, err
}

func refused(path, what, do string, err error) error {
	return &ledger.Trouble{What: fmt.Sprintf("%s %s.", filepath.Base(path), what), Safe: "Nothing of it was taken in; the log is as it was.", Do: do, Err: err}
}

// known is which entries a log has.
type known struct {
	ids   map[string]map[int]uuid.UUID // by device and number
	first map[uuid.UUID]bool           // those before which there was nothing: what a department began with
}

func (k *known) add(e *model.Entry) {
	of := k.ids[e.Stamp.Device]
	if of == nil {
		of = map[int]uuid.UUID{}
		k.ids[e.Stamp.Device] = of
	}
	of[e.N()] = e.ID
}

// mine is which entries are there.
func (b *Board) mine() (known, error) {
	k := known{map[string]map[int]uuid.UUID{}, map[uuid.UUID]bool{}}
	for e, err := range b.ledger.Entries(0) {
		if err != nil {
			return k, err
		}
		k.add(&e)
		if len(e.Seen) == 0 {
			k.first[e.ID] = true
		}
	}
	return k, nil
}

package board

import (
	"time"

	"tarpside/board/stores"
	"tarpside/model"
)

// A Replied is a row of a scene file and the entry that was made of it.
type Replied struct {
	Row   stores.SceneRow
	Entry model.Entry
}

// Replay logs the rows of a scene file, tap by tap, each row judged with all
// rows before it. Minute 0 is at start. Each calls back once its rows are safe
// on the disk. A refused row is no error.
func (b *Board) Replay(rows []stores.SceneRow, start time.Time, each func([]Replied) error) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	r := replayer{b: b, before: b.Picture().State.Seen(), scene: b.Picture().Scene, sent: map[string][]int{}}
	for len(rows) > 0 {
		n := 1
		for n < len(rows) && rows[n].Tap != "" && rows[n].Tap == rows[0].Tap {
			n++
		}
		entries, err := r.tap(rows[:n], start)
		if err != nil {
			return err
		}
		if err := b.log(entries); err != nil {
			return err
		}
		if each != nil {
			done := make([]Replied, n)
			for i := range done {
				done[i] = Replied{rows[i], entries[i]}
			}
			if err := each(done); err != nil {
				return err
			}
		}
		rows = rows[n:]
	}
	return nil
}

// replayer keeps which rows each device of the file has written.
type replayer struct {
	b      *Board
	before model.Vector
	scene  string
	sent   map[string][]int // device to the seqs of its rows
}

func (r *replayer) tap(rows []stores.SceneRow, start time.Time) ([]model.Entry, error) {
	entries := make([]model.Entry, len(rows))
	for i, row := range rows {
		e := model.Entry{Act: row.Act, Typed: start.Add(time.Duration(row.Minute) * time.Minute).UnixMilli(), Seen: r.seen(row)}
		e.Stamp.Device = row.Device
		if row.Act.Verb == model.Open { // a row of a file follows the scene of the rows before it
			id, err := r.b.id(r.b.opts.Now().UnixMilli())
			if err != nil {
				return nil, err
			}
			e.Takes, r.scene = []string{r.scene}, id.String()
		}
		e.Scene = r.scene
		r.sent[row.Device] = append(r.sent[row.Device], row.Seq)
		entries[i] = e
	}
	return entries, nil
}

// seen is what the row's device had received: its own rows, and those of the
// others up to the one that the row names.
func (r *replayer) seen(row stores.SceneRow) model.Vector {
	v := r.before.Clone()
	for device, seqs := range r.sent {
		for _, seq := range seqs {
			if device == row.Device || row.Seen == model.Blank || seq <= row.Seen {
				v[device]++
			}
		}
	}
	return v
}

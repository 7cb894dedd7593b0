package modeltest

import (
	"encoding/binary"
	"fmt"
	"strings"

	"tarpside/model"
	"tarpside/model/judge"
)

// A Log is what one device knows: its entries, in the order in which they
// came, and the board.
type Log struct {
	Device  string
	State   *model.State
	Entries []model.Entry
	Scene   string // the scene that acts are logged to
	Clock   model.Stamp
}

// New starts a log whose first entry brings the department in.
func New(device string, d *model.Department) *Log {
	l := &Log{Device: device, State: model.NewState(new(model.Department).Index()), Clock: model.Stamp{Wall: 1000, Device: device}}
	l.Do(model.Entry{Act: model.Act{Verb: model.Stores}, Stores: &model.InventoryPatch{Put: d,
		Whole: []string{model.TableRules, model.TablePulls}}})
	return l
}

// Fork is another device with all that this one knows.
func (l *Log) Fork(device string) *Log {
	c := *l
	c.Device, c.Clock.Device = device, device
	c.State = l.State.Clone()
	c.Entries = append([]model.Entry(nil), l.Entries...)
	return &c
}

// Do stamps the entry, judges it and keeps it. The entry's device is the log's
// own and it has seen everything, unless the entry says otherwise.
func (l *Log) Do(e model.Entry) *model.Entry {
	l.Clock = l.Clock.Tick(l.Clock.Wall + 10)
	if e.Stamp.Device == "" {
		e.Stamp.Device = l.Device
	}
	e.Stamp.Wall, e.Stamp.Count = l.Clock.Wall, l.Clock.Count
	if e.Seen == nil {
		e.Seen = l.State.Seen()
	}
	if e.Scene == "" {
		e.Scene = l.Scene
	}
	copy(e.ID[:], e.Stamp.Device)
	binary.BigEndian.PutUint64(e.ID[8:], uint64(e.N()))
	e.Device, e.Format = e.Stamp.Device, model.Format
	l.State = judge.Judge(l.State, &e)
	if e.Verb == model.Open {
		l.Scene = e.Scene
	}
	l.Entries = append(l.Entries, e)
	return &l.Entries[len(l.Entries)-1]
}

// Open starts a scene that follows those named, or with none stands beside
// the open ones.
func (l *Log) Open(scene string, follows ...string) *model.Entry {
	return l.Do(model.Entry{Act: model.Act{Verb: model.Open, Quantity: model.Blank}, Scene: scene, Takes: follows})
}

// Hear takes in the other log's entries and folds all of them. A clock far
// ahead does not pull this one along.
func (l *Log) Hear(o *Log) {
	l.Entries = append(l.Entries, o.Entries...)
	l.State = model.Fold(l.Entries)
	if o.Clock.Wall <= l.Clock.Wall+model.FarAhead {
		l.Clock = l.Clock.Receive(o.Clock, l.Clock.Wall)
	}
}

// Read reads an act as a script writes it: the verb, the item, a quantity,
// from>to, and by= rig= hold= read= note= in any order.
func Read(text string) (model.Act, error) {
	a := model.Act{Quantity: model.Blank, By: "CREW"}
	for i, w := range strings.Fields(text) {
		var n int
		key, value, pair := strings.Cut(w, "=")
		from, to, move := strings.Cut(w, ">")
		_, err := fmt.Sscanf(w, "%d", &n)
		switch {
		case i == 0:
			a.Verb = model.Verb(w)
		case pair:
			field := map[string]*string{"by": &a.By, "rig": &a.Rig, "hold": &a.Holder, "read": &a.Reading, "note": &a.Note}[key]
			if field == nil {
				return a, fmt.Errorf("%q in %q", w, text)
			}
			*field = value
		case move:
			a.From, a.To = from, to
		case err == nil && fmt.Sprint(n) == w:
			a.Quantity = n
		case a.Item == "":
			a.Item = w
		default:
			return a, fmt.Errorf("%q in %q", w, text)
		}
	}
	return a, nil
}

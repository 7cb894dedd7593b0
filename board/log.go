package board

import (
	"errors"
	"slices"
	"time"

	"github.com/google/uuid"

	"tarpside/model"
)

// A Tap is what one touch logs: one act or several that happen together.
type Tap struct {
	Scene string // "" for the scene that is on
	Acts  []model.Act
	Typed time.Time // when it happened, where that is not now
	Mends string    // the entry that it corrects, or whose note a blank_note takes away
}

// Log judges the acts in their order and keeps them: all of them or, with an
// error, none. They are on the disk when it returns. The entries have the
// replies; a refused act changes nothing and is kept all the same.
func (b *Board) Log(t Tap) ([]model.Entry, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	entries := make([]model.Entry, len(t.Acts))
	scene := t.Scene
	if scene == "" {
		scene = b.Picture().Scene
	}
	for i, a := range t.Acts {
		entries[i] = model.Entry{Act: a, Scene: scene, Mends: t.Mends}
		if !t.Typed.IsZero() {
			entries[i].Typed = t.Typed.UnixMilli()
		}
	}
	return entries, b.log(entries)
}

// OpenScene starts a scene beside the open ones, or after them: then it takes
// over their ground. It returns the entry; its Scene is the scene's id.
func (b *Board) OpenScene(by, name string, after []string, typed time.Time) (model.Entry, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	id, err := b.id(b.opts.Now().UnixMilli())
	if err != nil {
		return model.Entry{}, err
	}
	e := model.Entry{Act: model.Act{Verb: model.Open, By: by, Note: name, Quantity: model.Blank}, Scene: id.String(), Takes: slices.Clone(after)}
	if !typed.IsZero() {
		e.Typed = typed.UnixMilli()
	}
	entries := []model.Entry{e}
	err = b.log(entries)
	return entries[0], err
}

// log judges and keeps entries that are filled in but for id, stamp and reply.
func (b *Board) log(entries []model.Entry) error {
	if len(entries) == 0 {
		return nil
	}
	p, clock := *b.Picture(), b.clock
	from, tap := 0, ""
	for i := range entries {
		e := &entries[i]
		next, err := b.judged(p.State, e)
		if err != nil {
			b.clock = clock
			return err
		}
		if tap == "" {
			tap = e.ID.String()
		}
		if len(entries) > 1 {
			e.Tap = tap
		}
		if e.Verb == model.Open {
			p.Scene = e.Scene
			if len(next.Scenes()) == 1 { // it took over all others: their entries are the past
				from = len(p.Entries) + i
			}
		}
		p.State = next
	}
	if _, err := b.ledger.Append(entries...); err != nil {
		b.clock = clock
		return err
	}
	if p.Entries = append(p.Entries, entries...); from > 0 {
		p.Entries = slices.Clone(p.Entries[from:])
	}
	if blanks(entries) {
		return b.blank(entries)
	}
	if closes(entries) {
		p.Scene = sceneOn(p.State, b.Picture().State, p.Scene)
		b.keepBalance(p.State, p.Waiting)
	}
	b.publish(p)
	return nil
}

func closes(entries []model.Entry) bool {
	return slices.ContainsFunc(entries, func(e model.Entry) bool { return e.Verb == model.Close && e.Taken() })
}

func blanks(entries []model.Entry) bool {
	return slices.ContainsFunc(entries, func(e model.Entry) bool { return e.Verb == model.BlankNote && e.Taken() })
}

// blank takes the text of the notes away that entries name, wherever it is: a
// note may be the name of a scene or the words of a tag.
func (b *Board) blank(entries []model.Entry) error {
	for _, e := range entries {
		id, err := uuid.Parse(e.Mends)
		if e.Verb != model.BlankNote || !e.Taken() || err != nil {
			continue
		}
		if err := b.ledger.Blank(id); err != nil {
			return errors.Join(err, b.refold())
		}
		if err := b.ledger.DropBalancesAfter(made(id)); err != nil {
			return errors.Join(err, b.refold())
		}
	}
	return b.refold()
}

// made is a stamp before that of the entry with the id: a balance from before
// then does not have its note.
func made(id uuid.UUID) (s model.Stamp) {
	if id.Version() == 7 {
		sec, nsec := id.Time().UnixTime()
		s.Wall = time.Unix(sec, nsec).UnixMilli()
	}
	return s
}

// Work makes a scene the one that acts are logged to.
func (b *Board) Work(scene string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	p := *b.Picture()
	p.Scene = p.State.Scene(scene).ID
	b.publish(p)
}

// Add takes in entries that were made elsewhere, in any order and however
// often. It returns how many were new. One that comes in before an earlier
// one of its device is kept and counts once that is there too.
func (b *Board) Add(entries []model.Entry) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.add(entries)
}

func (b *Board) add(entries []model.Entry) (int, error) {
	now := b.opts.Now().UnixMilli()
	in := slices.Clone(entries)
	for i := range in {
		in[i].Ahead = in[i].Stamp.Wall > now+model.FarAhead
	}
	added, err := b.ledger.Append(in...)
	if err != nil || added == 0 {
		return 0, err
	}
	if blanks(in) {
		return added, b.blank(in)
	}
	if err := b.refold(); err != nil {
		return added, err
	}
	if p := b.Picture(); closes(in) {
		b.keepBalance(p.State, p.Waiting)
	}
	return added, nil
}

// SetSetting keeps a setting in the file.
func (b *Board) SetSetting(key, value string) error {
	if key == settingDevice || key == settingScene || key == settingPIN {
		return errors.New("the tablet's own name, the scene that is on and the officer's PIN are not settings to change this way")
	}
	return b.ledger.SetSetting(key, value)
}

// Setting reads a setting, "" if it was never set.
func (b *Board) Setting(key string) (string, error) { return b.ledger.Setting(key) }

package board

import (
	"errors"
	"time"

	"tarpside/model"
)

// A Tap is what one touch logs: one act or several that happen together.
type Tap struct {
	Scene string // "" for the scene that is on
	Acts  []model.Act
	Typed time.Time // when it happened, where that is not now
	Mends string    // the entry that it corrects
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
// over their ground. It returns the scene's id.
func (b *Board) OpenScene(by, name string, after []string, typed time.Time) (model.Entry, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	id, err := b.id(b.opts.Now().UnixMilli())
	if err != nil {
		return model.Entry{}, err
	}
	e := model.Entry{Act: model.Act{Verb: model.Open, By: by, Note: name, Quantity: model.Blank}, Scene: id.String(), Takes: after}
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
	s, clock := b.Picture().State, b.clock
	scene := b.Picture().Scene
	tap := ""
	for i := range entries {
		e := &entries[i]
		next, err := b.judged(s, e)
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
		if e.Verb == model.Open && e.Taken() {
			scene = e.Scene
		}
		s = next
	}
	if _, err := b.ledger.Append(entries...); err != nil {
		b.clock = clock
		return err
	}
	b.since = append(b.since, entries...)
	last := entries[len(entries)-1]
	if last.Verb == model.Close && last.Taken() {
		scene = lastScene(s)
		b.keepBalance(s)
	}
	b.publish(s, scene)
	return nil
}

// Work makes a scene the one that acts are logged to.
func (b *Board) Work(scene string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.publish(b.Picture().State, scene)
}

// Add takes in entries that were made elsewhere, in any order and however
// often. It returns how many were new.
func (b *Board) Add(entries []model.Entry) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	now := b.opts.Now().UnixMilli()
	have := b.Picture().State.Seen()
	in := make([]model.Entry, 0, len(entries))
	for _, e := range entries {
		if have.Covers(e.Stamp.Device, e.N()) {
			continue
		}
		e.Ahead = e.Ahead || e.Stamp.Wall > now+model.FarAhead
		in = append(in, e)
	}
	added, err := b.ledger.Append(in...)
	if err != nil || added == 0 {
		return 0, err
	}
	if err := b.fold(false); err != nil {
		return added, err
	}
	b.publish(b.current(), b.Picture().Scene)
	return added, nil
}

// keepBalance stores the fold once no scene is open, so that the next start
// need not fold what lies behind. It is a cache: without it the start is
// slower, so a failure is no trouble of the act that was logged.
func (b *Board) keepBalance(s *model.State) {
	for _, sc := range s.Scenes() {
		if !sc.Closed {
			return
		}
	}
	_ = b.putBalance(s)
}

// SetSetting keeps a setting in the file.
func (b *Board) SetSetting(key, value string) error {
	if key == settingDevice {
		return errors.New("the tablet's own name is not a setting to change")
	}
	return b.ledger.SetSetting(key, value)
}

// Setting reads a setting, "" if it was never set.
func (b *Board) Setting(key string) (string, error) { return b.ledger.Setting(key) }

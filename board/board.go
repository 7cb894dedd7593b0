// Package board is the one door to a department's log: open it, log an act
// and get its reply, watch the picture of what is where. It touches the world
// (the file, the clock, random ids) so that model need not.
package board

import (
	"errors"
	"io"
	"maps"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	"github.com/google/uuid"

	"tarpside/board/ledger"
	"tarpside/model"
	"tarpside/model/judge"
)

// Options are what the board takes from the world around it.
type Options struct {
	Now    func() time.Time // the wall clock
	Random io.Reader        // for ids
	Device string           // this tablet; "" keeps the one in the file, or makes one
	Ledger ledger.Options
}

// A Picture is the board at one moment. It never changes; a later act makes
// another with a higher generation.
type Picture struct {
	Gen      uint64
	State    *model.State
	Scene    string        // the scene that acts are logged to
	Entries  []model.Entry // in the order of the fold, from the first of the open scenes on; what a balance covers is left out
	Waiting  int           // entries that came in before an earlier one of their device; they count once it comes
	Behind   time.Duration // how far the clock stands before the last entry; 0 if it does not
	ReadOnly string        // why nothing can be logged, in words; "" if it can
	Device   string
}

// Board is an open department file.
type Board struct {
	opts     Options
	ledger   *ledger.Ledger
	mu       sync.Mutex // one writer; the picture is read without it
	clock    model.Stamp
	pinLast  time.Time // of the last wrong PIN
	pinWrong int       // wrong PINs in a row
	picture  atomic.Pointer[Picture]

	watchMu  sync.Mutex
	watchers map[int]func(*Picture)
	nextID   int
}

// Open opens the department file at path, or makes it. Another program on the
// same file is no error: the board is then read-only and the picture says so.
// Errors are *ledger.Trouble: what happened, what is safe, what to do.
func Open(path string, opts Options) (*Board, error) {
	l, err := ledger.Open(path, opts.Ledger)
	if err != nil {
		return nil, err
	}
	b := &Board{opts: opts, ledger: l, watchers: map[int]func(*Picture){}}
	if err := b.start(); err != nil {
		return nil, errors.Join(err, l.Close())
	}
	return b, nil
}

// Close gives the file free.
func (b *Board) Close() error {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.ledger.Close()
}

// Picture is the board now.
func (b *Board) Picture() *Picture { return b.picture.Load() }

// Watch calls f with every new picture, in the goroutine that made it and
// while the board is held, so f must not log. After the returned function was
// called, from f or elsewhere, only a call that is under way may still come.
func (b *Board) Watch(f func(*Picture)) (stop func()) {
	b.watchMu.Lock()
	defer b.watchMu.Unlock()
	id := b.nextID
	b.nextID++
	b.watchers[id] = f
	return func() {
		b.watchMu.Lock()
		defer b.watchMu.Unlock()
		delete(b.watchers, id)
	}
}

// start names the device and folds what the file holds.
func (b *Board) start() (err error) {
	readOnly, why := b.ledger.ReadOnly()
	device := b.opts.Device
	if device == "" {
		if device, err = b.ledger.Setting(settingDevice); err != nil {
			return err
		}
	}
	if device == "" {
		device = b.newDevice()
		if !readOnly {
			if err := b.ledger.SetSetting(settingDevice, device); err != nil {
				return err
			}
		}
	}
	scene, err := b.ledger.Setting(settingScene)
	if err != nil {
		return err
	}
	b.clock.Device = device
	b.picture.Store(&Picture{Device: device, Scene: scene, ReadOnly: why})
	if err := b.refold(); err != nil {
		return err
	}
	if p := b.Picture(); !readOnly && blanks(p.Entries) {
		_ = b.blank(p.Entries) // a blanking that a power cut came between; the log is fine without
	}
	return nil
}

const (
	settingDevice = "device"
	settingScene  = "scene" // the one that acts are logged to
)

func (b *Board) newDevice() string {
	var raw [4]byte
	if _, err := io.ReadFull(b.opts.Random, raw[:]); err != nil {
		return "tablet"
	}
	const letters = "0123456789abcdefghjkmnpqrstvwxyz"
	out := make([]byte, len(raw))
	for i, c := range raw {
		out[i] = letters[int(c)%len(letters)]
	}
	return "t-" + string(out)
}

// behind is how far the wall clock stands before the last entry.
func (b *Board) behind() time.Duration {
	d := time.Duration(b.clock.Wall-b.opts.Now().UnixMilli()) * time.Millisecond
	if d < time.Minute {
		return 0
	}
	return d
}

// sceneOn is the scene that acts are logged to when it was old before ("" in
// a new file): the one that followed it, or if it has just been closed the
// last one opened that is not. before is nil at the start.
func sceneOn(s, before *model.State, old string) string {
	all := s.Scenes()
	if old == "" {
		old = all[len(all)-1].ID
	}
	now := s.Scene(old)
	if before == nil || before.Scene(old).Closed {
		return now.ID
	}
	for i := len(all) - 1; i >= 0 && now.Closed; i-- {
		if !all[i].Closed {
			now = all[i]
		}
	}
	return now.ID
}

// publish puts a new picture up and tells the watchers.
func (b *Board) publish(p Picture) {
	old := b.picture.Load()
	if p.Scene != old.Scene {
		_ = b.ledger.SetSetting(settingScene, p.Scene) // if it fails, the next start takes the scene opened last
	}
	p.Gen, p.Behind, p.ReadOnly, p.Device = old.Gen+1, b.behind(), old.ReadOnly, old.Device
	b.picture.Store(&p)
	b.watchMu.Lock()
	var list []func(*Picture)
	for _, id := range slices.Sorted(maps.Keys(b.watchers)) {
		list = append(list, b.watchers[id])
	}
	b.watchMu.Unlock()
	for _, f := range list {
		f(&p)
	}
}

// id is a UUIDv7 (RFC 9562) for a moment in Unix milliseconds.
func (b *Board) id(ms int64) (uuid.UUID, error) {
	var raw [10]byte
	if _, err := io.ReadFull(b.opts.Random, raw[:]); err != nil {
		return uuid.Nil, err
	}
	return model.NewID(ms, raw), nil
}

// judged gives an entry its id, stamp and reply on top of a state.
func (b *Board) judged(s *model.State, e *model.Entry) (*model.State, error) {
	now := b.opts.Now().UnixMilli()
	tick := b.clock.Tick(now)
	b.clock = tick
	if e.Stamp.Device == "" {
		e.Stamp.Device = tick.Device
	}
	e.Stamp.Wall, e.Stamp.Count = tick.Wall, tick.Count
	e.Format = model.Format
	if e.Typed == 0 && now < tick.Wall-int64(time.Minute/time.Millisecond) {
		e.Typed = now // the clock was set back: both times are kept
	}
	if e.Seen == nil {
		e.Seen = s.Seen()
	}
	var err error
	if e.ID, err = b.id(tick.Wall); err != nil {
		return nil, err
	}
	e.Device = e.Stamp.Device
	return judge.Judge(s, e), nil
}

// Package board is the one door to a department's log: open it, log an act
// and get its reply, watch the picture of what is where. It touches the world
// (the file, the clock, random ids) so that model need not.
package board

import (
	"errors"
	"io"
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
	Entries  []model.Entry // since the last balance, oldest first; all of the open scenes
	Behind   time.Duration // how far the clock stands before the last entry; 0 if it does not
	ReadOnly string        // why nothing can be logged, in words; "" if it can
	Device   string
}

// Board is an open department file.
type Board struct {
	opts    Options
	ledger  *ledger.Ledger
	mu      sync.Mutex // one writer; the picture is read without it
	clock   model.Stamp
	base    *model.State // the balance that the fold starts from
	covers  int          // entries in the base, by order of arrival
	since   []model.Entry
	picture atomic.Pointer[Picture]

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

// Watch calls f with every new picture, in the goroutine that made it, until
// the returned function is called.
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

// start folds what the file holds: the last balance, and the entries since.
func (b *Board) start() error {
	if err := b.fold(false); err != nil {
		return err
	}
	device := b.opts.Device
	if device == "" {
		var err error
		if device, err = b.ledger.Setting(settingDevice); err != nil {
			return err
		}
	}
	readOnly, why := b.ledger.ReadOnly()
	if device == "" {
		device = b.newDevice()
		if !readOnly {
			if err := b.ledger.SetSetting(settingDevice, device); err != nil {
				return err
			}
		}
	}
	b.clock.Device = device
	p := &Picture{State: b.current(), Entries: b.since, ReadOnly: why, Device: device}
	p.Scene = lastScene(p.State)
	p.Behind = b.behind()
	b.picture.Store(p)
	return nil
}

const settingDevice = "device"

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

// current is the fold of the base and what came since.
func (b *Board) current() *model.State {
	s := b.base.Clone()
	for _, e := range model.Sorted(b.since) {
		s.Apply(e)
	}
	return s
}

// fold reads the base and the entries since from the file. An entry whose
// writer had not seen all that the balance covers needs the whole log.
func (b *Board) fold(whole bool) error {
	b.base, b.covers, b.since = model.NewState(new(model.Department).Index()), 0, nil
	if !whole {
		balance, ok, err := b.ledger.LatestBalance()
		if err != nil {
			return err
		}
		if ok {
			if s, fits := model.RestoreBalance(balance.Blob); fits {
				b.base, b.covers, b.clock = s, balance.Covers, balance.Stamp
			}
		}
	}
	vector := b.base.Seen()
	for e, err := range b.ledger.Entries(b.covers) {
		if err != nil {
			return err
		}
		if !whole && b.covers > 0 && !covered(vector, e.Seen) {
			return b.fold(true)
		}
		b.since = append(b.since, e)
		b.hear(e.Stamp)
	}
	return nil
}

// covered tells whether everything in the balance was seen.
func covered(balance, seen model.Vector) bool {
	for device, n := range balance {
		if !seen.Covers(device, n) {
			return false
		}
	}
	return true
}

// hear moves the clock past a stamp that was logged here or came in.
func (b *Board) hear(s model.Stamp) {
	if device := b.clock.Device; s.Compare(model.Stamp{Wall: b.clock.Wall, Count: b.clock.Count, Device: s.Device}) > 0 {
		if s.Wall > b.opts.Now().UnixMilli()+model.FarAhead && s.Device != device {
			return // a clock far ahead does not pull this one along
		}
		b.clock = model.Stamp{Wall: s.Wall, Count: s.Count, Device: device}
	}
}

// behind is how far the wall clock stands before the last entry.
func (b *Board) behind() time.Duration {
	d := time.Duration(b.clock.Wall-b.opts.Now().UnixMilli()) * time.Millisecond
	if d < time.Minute {
		return 0
	}
	return d
}

func lastScene(s *model.State) string {
	all := s.Scenes()
	for i := len(all) - 1; i >= 0; i-- {
		if !all[i].Closed {
			return all[i].ID
		}
	}
	return all[len(all)-1].ID
}

// publish puts a new picture up and tells the watchers.
func (b *Board) publish(s *model.State, scene string) {
	old := b.picture.Load()
	p := &Picture{Gen: old.Gen + 1, State: s, Scene: scene, Entries: b.since, Behind: b.behind(),
		ReadOnly: old.ReadOnly, Device: b.clock.Device}
	b.picture.Store(p)
	b.watchMu.Lock()
	list := make([]func(*Picture), 0, len(b.watchers))
	for id := 0; id < b.nextID; id++ {
		if f := b.watchers[id]; f != nil {
			list = append(list, f)
		}
	}
	b.watchMu.Unlock()
	for _, f := range list {
		f(p)
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

package board

import (
	"crypto/pbkdf2"
	"crypto/sha256"
	"crypto/subtle"
	"encoding/base64"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"
)

// settingPIN keeps the officer's PIN, salted and hashed; never the PIN.
const settingPIN = "officer-pin"

const (
	pinKind   = "pbkdf2-sha256"
	pinRounds = 600_000 // OWASP Password Storage Cheat Sheet, PBKDF2 with HMAC-SHA-256 (from memory)
	pinSalt   = 16
	pinTries  = 5 // wrong ones in a row, then a wait
	pinWait   = time.Minute
)

// The errors about a PIN. Nothing was changed or logged when one is returned.
var (
	ErrPIN      = errors.New("that is not the officer's PIN. Nothing was changed; try again")
	ErrPINShape = errors.New("a PIN has 4 to 8 digits. Nothing was changed; type another one")
	ErrPINWait  = errors.New("too many wrong PINs. Nothing was changed; wait a minute, then try again")
	errPINKept  = errors.New("the officer's PIN in this file cannot be read. Nothing was changed; clear it at a desk and set a new one")
)

// HasPIN tells whether an officer's PIN is set.
func (b *Board) HasPIN() (bool, error) {
	kept, err := b.ledger.Setting(settingPIN)
	return kept != "", err
}

// SetPIN sets the officer's PIN, 4 to 8 digits; "" takes it away. Where one is
// set, old must be that one. The PIN keeps a passer-by from signing as an
// officer; against somebody who has the file, so few digits are no lock.
func (b *Board) SetPIN(old, pin string) error {
	if pin != "" && !pinShaped(pin) {
		return ErrPINShape
	}
	if err := b.CheckPIN(old); err != nil {
		return err
	}
	if pin == "" {
		return b.ledger.SetSetting(settingPIN, "")
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	salt := make([]byte, pinSalt)
	if _, err := io.ReadFull(b.opts.Random, salt); err != nil {
		return err
	}
	key, err := pbkdf2.Key(sha256.New, pin, salt, pinRounds, sha256.Size)
	if err != nil {
		return err
	}
	enc := base64.RawStdEncoding
	return b.ledger.SetSetting(settingPIN, fmt.Sprintf("%s$%d$%s$%s", pinKind, pinRounds, enc.EncodeToString(salt), enc.EncodeToString(key)))
}

// CheckPIN is nil for the officer's PIN, and while none is set. After five
// wrong ones in a row it takes none for a minute.
func (b *Board) CheckPIN(pin string) error {
	kept, err := b.ledger.Setting(settingPIN)
	if err != nil || kept == "" {
		return err
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	now := b.opts.Now()
	if b.pinWrong >= pinTries {
		if wait := now.Sub(b.pinLast); wait >= 0 && wait < pinWait {
			return ErrPINWait
		}
		b.pinWrong = 0
	}
	right, err := samePIN(kept, pin)
	if err != nil {
		return err
	}
	if !right {
		b.pinWrong, b.pinLast = b.pinWrong+1, now
		return ErrPIN
	}
	b.pinWrong = 0
	return nil
}

// ClearPIN takes a forgotten PIN away. It is for whoever has the file at a
// desk, not for a screen.
func (b *Board) ClearPIN() error { return b.ledger.SetSetting(settingPIN, "") }

func pinShaped(pin string) bool {
	return len(pin) >= 4 && len(pin) <= 8 && strings.Trim(pin, "0123456789") == ""
}

// samePIN compares a PIN with what is kept of the right one.
func samePIN(kept, pin string) (bool, error) {
	f := strings.Split(kept, "$")
	if len(f) != 4 || f[0] != pinKind {
		return false, errPINKept
	}
	rounds, err1 := strconv.Atoi(f[1])
	salt, err2 := base64.RawStdEncoding.DecodeString(f[2])
	want, err3 := base64.RawStdEncoding.DecodeString(f[3])
	if errors.Join(err1, err2, err3) != nil || rounds < 1 || rounds > 100*pinRounds || len(want) != sha256.Size {
		return false, errPINKept
	}
	key, err := pbkdf2.Key(sha256.New, pin, salt, rounds, sha256.Size)
	if err != nil {
		return false, errPINKept
	}
	return subtle.ConstantTimeCompare(key, want) == 1, nil
}

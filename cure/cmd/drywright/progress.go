package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"time"
)

// progress says how far a sweep has come: one line that is written over on a terminal, now and then a line of its own
// elsewhere, nothing at all for what is over at once.
type progress struct {
	mu       sync.Mutex
	out      io.Writer
	terminal bool
	what     string
	begun    time.Time
	spoken   time.Time
	total    int64 // 0: nobody knows
	wide     int
}

func (p *program) newProgress(what string, total int64) *progress {
	return &progress{out: p.stderr, terminal: isTerminal(p.stderr), what: what, begun: time.Now(), spoken: time.Now(), total: total}
}

// isTerminal reports whether somebody watches.
func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// pauses between two words.
const (
	terminalPause = 100 * time.Millisecond
	linePause     = 5 * time.Second
)

// judged takes how many settings have been judged so far.
func (g *progress) judged(n int64) {
	g.mu.Lock()
	defer g.mu.Unlock()
	pause := linePause
	if g.terminal {
		pause = terminalPause
	}
	if time.Since(g.spoken) < pause {
		return
	}
	g.spoken = time.Now()
	line := fmt.Sprintf("%s: %d settings judged in %s", g.what, n, time.Since(g.begun).Round(time.Second))
	if g.total > 0 && n > 0 {
		left := time.Duration(float64(time.Since(g.begun)) * float64(max(0, g.total-n)) / float64(n))
		line = fmt.Sprintf("%s: %s %d of about %d settings, %s left", g.what, bar(n, g.total), n, g.total, left.Round(time.Second))
	}
	if g.terminal {
		fmt.Fprintf(g.out, "\r%-*s", g.wide, line)
		g.wide = len(line)
		return
	}
	fmt.Fprintln(g.out, line)
}

// expect takes how many settings are now thought to be needed.
func (g *progress) expect(total int64) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.total = total
}

// bar draws a share.
func bar(n, total int64) string {
	const width = 20
	full := int(min(width, width*n/max(1, total)))
	return "[" + strings.Repeat("#", full) + strings.Repeat(".", width-full) + "]"
}

// over wipes the line.
func (g *progress) over() {
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.terminal && g.wide > 0 {
		fmt.Fprintf(g.out, "\r%s\r", strings.Repeat(" ", g.wide))
	}
	g.wide = 0
}

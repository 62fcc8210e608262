package sim_test

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"dwellcast/sim"
)

func TestBufferOfNoneIsARendezvous(t *testing.T) {
	d := newDiary()
	b := sim.NewBuffer[int](d.calendar, 0, 0)
	d.calendar.Start("putter", func(p *sim.Process) {
		for i := range 2 {
			b.Put(p, i)
			d.note("put %d", i)
			p.Wait(10)
		}
	})
	d.calendar.Start("taker", func(p *sim.Process) {
		for range 2 {
			p.Wait(4)
			d.note("took %d", b.Take(p))
		}
	})
	d.run(t, 100, sim.ErrStuck, "4ns took 0", "4ns put 0", "14ns put 1", "14ns took 1")
}

// However it comes about, an item that changes hands is under way for the transit time.
func TestRendezvousHasItsTransit(t *testing.T) {
	for _, first := range []string{"putter", "taker"} {
		d := newDiary()
		b := sim.NewBuffer[int](d.calendar, 0, 5)
		delay := map[string]time.Duration{"putter": 3, "taker": 3}
		delay[first] = 0
		d.calendar.Start("putter", func(p *sim.Process) { p.Wait(delay["putter"]); b.Put(p, 1); d.note("put") })
		d.calendar.Start("taker", func(p *sim.Process) { p.Wait(delay["taker"]); b.Take(p); d.note("took") })
		d.run(t, 100, sim.ErrStuck, "3ns put", "8ns took")
	}
}

func TestBufferServesTakersInTurn(t *testing.T) {
	d := newDiary()
	b := sim.NewBuffer[int](d.calendar, 3, 0)
	for _, name := range []string{"a", "b", "c"} {
		d.calendar.Start(name, func(p *sim.Process) {
			for {
				item := b.Take(p)
				d.note("%s took %d", name, item)
			}
		})
	}
	d.calendar.Start("putter", func(p *sim.Process) {
		p.Wait(1)
		for i := range 3 {
			b.Put(p, i)
		}
		p.Wait(1)
		b.Put(p, 3)
	})
	d.run(t, 100, sim.ErrStuck, "1ns a took 0", "1ns b took 1", "1ns c took 2", "2ns a took 3")
}

func TestBufferServesPuttersInTurn(t *testing.T) {
	d := newDiary()
	b := sim.NewBuffer[string](d.calendar, 1, 0)
	for _, name := range []string{"a", "b", "c"} {
		d.calendar.Start(name, func(p *sim.Process) {
			b.Put(p, name+"1")
			b.Put(p, name+"2")
		})
	}
	d.calendar.Start("taker", func(p *sim.Process) {
		for range 6 {
			p.Wait(1)
			d.note("%s", b.Take(p))
		}
	})
	d.run(t, 100, sim.ErrStuck, "1ns a1", "2ns a2", "3ns b1", "4ns c1", "5ns b2", "6ns c2")
}

// Two ask for room while there is none: what is promised to the first is not taken by the second, nor lost when declined.
func TestRoomIsPromisedAndDeclined(t *testing.T) {
	for _, capacity := range []int{0, 1} {
		d := newDiary()
		b := sim.NewBuffer[string](d.calendar, capacity, 0)
		if capacity > 0 {
			b.Add("there", 0)
		}
		d.calendar.Start("first", func(p *sim.Process) { b.AwaitRoom(p, 1); d.note("declined"); b.Decline() })
		d.calendar.Start("second", func(p *sim.Process) { b.AwaitRoom(p, 1); b.Add("second", 0); d.note("added") })
		d.calendar.Start("taker", func(p *sim.Process) {
			p.Wait(1)
			for range capacity + 1 {
				d.note("took %s", b.Take(p))
				p.Wait(1)
			}
		})
		d.calendar.Start("greedy", func(p *sim.Process) {
			p.Wait(1)
			d.note("room %v", b.CanPut(1))
		})
		if capacity == 0 {
			d.run(t, 100, sim.ErrStuck, "1ns room false", "1ns declined", "1ns added", "1ns took second")
		} else {
			d.run(t, 100, sim.ErrStuck, "1ns took there", "1ns room false", "1ns declined", "1ns added", "2ns took second")
		}
	}
}

func TestAwaitSeveral(t *testing.T) {
	d := newDiary()
	b := sim.NewBuffer[int](d.calendar, 4, 2)
	d.calendar.Start("pairs", func(p *sim.Process) {
		for range 2 {
			b.Await(p, 2)
			d.note("pair %d %d", b.Remove(), b.Remove())
		}
	})
	d.calendar.Start("single", func(p *sim.Process) { d.note("single %d", b.Take(p)) }) // behind the pair, though one is there
	d.calendar.Start("putter", func(p *sim.Process) {
		for i := range 5 {
			p.Wait(10)
			b.Put(p, i)
		}
	})
	d.run(t, 100, sim.ErrStuck, "22ns pair 0 1", "32ns single 2", "52ns pair 3 4")
}

func TestAwaitRoomForSeveral(t *testing.T) {
	d := newDiary()
	b := sim.NewBuffer[int](d.calendar, 2, 0)
	d.calendar.Start("putter", func(p *sim.Process) {
		for i := range 2 {
			b.AwaitRoom(p, 2)
			b.Add(2*i, 3)
			b.Add(2*i+1, 3)
			d.note("added a pair")
		}
	})
	d.calendar.Start("taker", func(p *sim.Process) {
		for range 4 {
			d.note("took %d", b.Take(p))
			p.Wait(10)
		}
	})
	d.run(t, 100, sim.ErrStuck, "0s added a pair", "3ns took 0", "13ns took 1", "13ns added a pair", "23ns took 2", "33ns took 3")
}

func TestContentIsAccounted(t *testing.T) {
	d := newDiary()
	b := sim.NewBuffer[int](d.calendar, 2, 0)
	d.calendar.Start("putter", func(p *sim.Process) {
		p.Wait(2)
		b.Put(p, 1)
		p.Wait(3)
		b.Put(p, 2)
		p.Wait(1)
		b.Put(p, 3)
	})
	d.calendar.Start("taker", func(p *sim.Process) {
		p.Wait(10)
		for range 3 {
			b.Take(p)
		}
	})
	d.run(t, 12, sim.ErrStuck)
	b.Close()
	got := b.Content
	for _, c := range []struct {
		what      string
		got, want int64
	}{
		{"integral", got.Integral.Nanos, 3*1 + 5*2}, // the third item waits in the hand and slips in at once, at 10
		{"empty", int64(got.Empty), 2},
		{"full", int64(got.Full), 5},
		{"entered", got.Entered, 3},
		{"waited", got.Waited, 2}, // the third was taken as it came
	} {
		if c.got != c.want {
			t.Errorf("%s: got %d, want %d", c.what, c.got, c.want)
		}
	}
}

// Whatever the processes do, items leave in the order in which they came, none is lost or made, and no more lie in the buffer
// than there is room for.
func TestBufferKeepsOrderAndRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity := rapid.IntRange(-1, 3).Draw(t, "capacity")
		transit := time.Duration(rapid.IntRange(0, 4).Draw(t, "transit"))
		pauses := rapid.SliceOfN(rapid.IntRange(0, 5), 1, 8)
		d := newDiary()
		b := sim.NewBuffer[int](d.calendar, capacity, transit)
		takers := rapid.IntRange(1, 3).Draw(t, "takers")
		put, inHand := 0, map[int]time.Duration{}
		for range rapid.IntRange(1, 3).Draw(t, "putters") {
			list := pauses.Draw(t, "putter's pauses")
			d.calendar.Start("putter", func(p *sim.Process) {
				for i := 0; ; i++ {
					p.Wait(time.Duration(list[i%len(list)]) + 1)
					item := put
					put++
					inHand[item] = d.calendar.Now()
					b.Put(p, item)
				}
			})
		}
		var taken []int
		for range takers {
			list := pauses.Draw(t, "taker's pauses")
			d.calendar.Start("taker", func(p *sim.Process) {
				for i := 0; ; i++ {
					item := b.Take(p)
					if d.calendar.Now() < inHand[item]+transit {
						panic("taken before its transit")
					}
					taken = append(taken, item)
					p.Wait(time.Duration(list[i%len(list)]))
				}
			})
		}
		for at := time.Duration(1); at < 100; at++ {
			if err := d.calendar.Run(at); err != nil {
				t.Fatal(err)
			}
			room := capacity
			if capacity == 0 {
				room = takers // on its way to one that waits
			}
			if capacity >= 0 && b.Len() > room {
				t.Fatalf("%d items in a buffer of %d", b.Len(), capacity)
			}
		}
		var all []int
		all = append(all, taken...)
		b.Items(func(item int) { all = append(all, item) })
		want := make([]int, put)
		for i := range want {
			want[i] = i
		}
		if diff := cmp.Diff(all, want); diff != "" {
			t.Fatalf("items taken, then there (-got +want):\n%s", diff)
		}
	})
}

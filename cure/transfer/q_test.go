package transfer
import ("testing";"fmt";"math"
"github.com/drywright/drywright/cure/air")
func must(s air.State, e error) air.State { if e!=nil {panic(e)}; return s}
func TestQ(t *testing.T){
 a:=must(air.FromRelativeHumidity(333.15,101325,.1,true))
 s:=&Surface{Air:a,Wall:333.15,Law:Given{25},Factor:1}
 lo,hi:=273.15,333.15
 for i:=0;i<60;i++{ m:=(lo+hi)/2; e:=s.Exchange(m,1); if e.FilmHeat>e.Flux*air.LatentHeat(m){lo=m}else{hi=m}}
 fmt.Println("plateau",lo-273.15, a.WetBulb()-273.15, s.Exchange(lo,1))
 s.Pile=&Pile{.0008,.93,1.1,.035,.9}
 e:=s.Exchange(300,1); fmt.Println(e, e.Convected+e.Radiated-e.FilmHeat-e.Flux*air.VapourHeatCapacity((300+a.T)/2)*(e.Tip-300))
 room:=must(air.FromRelativeHumidity(293.15,101325,.5,true))
 oven:=must(air.FromHumidityRatio(393.15,101325,.02,true))
 pile:=&Pile{.0008,.93,1.1,.035,.9}
 for _,L:=range []Law{Given{35},Parallel{.1,.3,false},Parallel{3,.3,false},Buoyant{.3,Vertical},Buoyant{.3,FacingUp},Buoyant{.3,FacingDown},Combined{Parallel{.1,.3,false},Buoyant{.3,FacingUp}}}{
  for _,ai:=range []air.State{room,oven}{
   for _,pl:=range []*Pile{nil,pile}{
   worst:=0.0; non:=0; var at string; worstNon:=0.0; var where string
   for T:=275.;T<ai.T+20;T+=.7{
    s:=Surface{Air:ai,Wall:ai.T,Law:L,Emissivity:.9,Factor:1,Pile:pl}
    p:=s.Prepare(T)
    prev:=math.Inf(-1)
    for x:=.0;x<=1;x+=.01{
      j,_:=p.Flux(x)
      if j<prev {non++; if d:=(prev-j)/math.Abs(j); d>worstNon{worstNon=d; where=fmt.Sprintf("%.2f %.2f",T,x)}}
      prev=j
      if pl!=nil{
       q:=p; 
       f:=q.tips(x)
       for k:=0;k<4;k++{ q.dryTip=f.tip; q.refY(f); f=q.tips2(x,f) }
       if d:=math.Abs(f.j-j)/(math.Abs(f.j)+1e-9); d>worst {worst=d; at=fmt.Sprintf("%.1f %.2f %.3g %.3g",T,x,j,f.j)}
      }
    }
   }
   fmt.Printf("%T %v pile=%v nonmono=%d %.2g %s worst=%.2g %s\n",L,ai.T,pl!=nil,non,worstNon,where,worst,at)
  }}
 }
}
func (p *Prepared) refY(f stream){}
func (p *Prepared) tips2(a float64, f stream) stream {
	s := p.s
	air1 := s.Air
	l, dl := StefanLog(air1.Y, a*p.full)
	y := p.tipFraction(f)
	for range 30 {
		m := filmProps(air1, f.tip, y)
		f.h = s.Factor * coefficient(s.Law, air1, f.tip, y, m)
		f.k = MassCoefficient(f.h, m)
		outer := conductance(f.k, air1.P, (f.tip+air1.T)/2)
		mean := (p.T + f.tip) / 2
		pile := s.Pile.Porosity / (s.Pile.Tortuosity * s.Pile.Length) * air.Diffusivity(mean, air1.P)
		inner := conductance(pile, air1.P, mean)
		share := inner / (outer + inner)
		g := outer * share
		f.j, f.slope = g*l, g*dl*p.full
		y = 1 - max(1-air1.Y, edge)*math.Exp(-l*share)
		f.tip = p.tipTemperature(f.h, f.j, f.tip)
	}
	return f
}
var sinkE Exchange; var sinkF float64
func bench(b *testing.B, L Law, pl *Pile){
 a:=must(air.FromHumidityRatio(393.15,101325,.02,true))
 s:=&Surface{Air:a,Wall:393.15,Law:L,Emissivity:.9,Factor:1,Pile:pl}
 b.Run("exchange",func(b *testing.B){ b.ReportAllocs(); for i:=0;i<b.N;i++{ sinkE=s.Exchange(310,1)}})
 b.Run("flux",func(b *testing.B){ p:=s.Prepare(310); b.ReportAllocs(); for i:=0;i<b.N;i++{ sinkF,_=p.Flux(.9)}})
}
func BenchmarkGiven(b *testing.B){bench(b,Given{35},nil)}
func BenchmarkComb(b *testing.B){bench(b,Combined{Parallel{.1,.3,false},Buoyant{.3,Vertical}},nil)}
func BenchmarkCombPile(b *testing.B){bench(b,Combined{Parallel{.1,.3,false},Buoyant{.3,Vertical}},&Pile{.0008,.93,1.1,.035,.9})}
func BenchmarkCombUpPile(b *testing.B){bench(b,Combined{Parallel{.1,.3,false},Buoyant{.3,FacingUp}},&Pile{.0008,.93,1.1,.035,.9})}

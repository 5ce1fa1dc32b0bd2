import puppeteer from 'puppeteer-core';
const [,, out, w='1440', theme='light', grey='0', what='figs'] = process.argv;
const b = await puppeteer.launch({executablePath:'/usr/bin/chromium',headless:true,userDataDir:'/tmp/h/scratch-pictures/prof',args:['--no-sandbox','--disable-gpu','--disable-background-networking','--no-first-run','--disable-component-update','--disable-sync','--disable-quic','--disable-dev-shm-usage']});
const p = await b.newPage();
p.on('console',m=>{if(['error','warn'].includes(m.type()))console.log(m.type(),m.text())});
p.on('pageerror',e=>console.log('ERR',e.message));
await p.setViewport({width:+w,height:1000,deviceScaleFactor:1});
await p.emulateMediaFeatures([{name:'prefers-color-scheme',value:theme}]);
await p.goto('http://127.0.0.1:8471/',{waitUntil:'load'});
await p.waitForSelector('#tab-tunnel',{timeout:30000});
const wait=ms=>new Promise(r=>setTimeout(r,ms));
if(grey==='1') await p.evaluate(()=>{document.documentElement.style.filter='grayscale(1)'});
if(what==='hover'){await p.evaluate(()=>document.getElementById('tab-tunnel').click());await wait(500);const m=await p.$('.moist');await m.evaluate(x=>x.scrollIntoView({block:'center'}));await wait(1800);const fs=await p.$$('#detail-panel figure');let i=0;for(const f of fs){await f.evaluate(x=>x.scrollIntoView({block:'center'}));await wait(500);const s=await f.$('[role=slider]');await s.focus();for(let k=0;k<3;k++)await p.keyboard.press('PageUp');await p.keyboard.press('ArrowLeft');await wait(150);await f.screenshot({path:out+'/hover-'+(i++)+'.png'});}}
const shot=async(sel,name)=>{const es=await p.$$(sel);let i=0;for(const e of es){await e.evaluate(x=>x.scrollIntoView({block:'center'}));await wait(400);await e.screenshot({path:`${out}/${name}${es.length>1?'-'+i:''}.png`});i++;}};
if(what==='figs'){
await shot('section.picture','lanes');
for(const k of ['room','static_oven','tunnel']){await p.evaluate(k=>document.getElementById('tab-'+k).click(),k);await wait(300);
 const m=await p.$('.moist');await m.evaluate(x=>x.scrollIntoView({block:'center'}));await wait(1500);
 await shot('#detail-panel figure','fig-'+k);}
}
if(what==='plan'){
 await p.$eval('.plan',e=>e.scrollIntoView());await wait(1500);
 await p.$eval('[data-question="costs"]',e=>e.click());await p.waitForSelector('[data-costs]',{timeout:240000});await shot('.costs figure','cost');
 await p.evaluate(()=>document.querySelector('input[name="plan-route"][value="static_oven"]').click());
 await p.$eval('[data-question="window"]',e=>e.click());await p.waitForSelector('[data-window]',{timeout:240000});await shot('.window figure','window');
 await p.evaluate(()=>document.querySelector('[data-question="spread"]').click());await p.waitForSelector('[data-spread]',{timeout:280000});await shot('.spread','spread');
}
await b.close();

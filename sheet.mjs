import { chromium } from 'playwright-core';
import { writeFileSync } from 'node:fs';
const b = await chromium.launch({executablePath:'/usr/lib/chromium/chromium',args:['--no-sandbox']});
const [,, out, ...names] = process.argv;
const html = `<body style="margin:0;display:flex;background:#888;gap:4px">`+names.flatMap(n=>['chromium','firefox','webkit'].map(e=>`<img src="file:///tmp/engines-shots/${e}-${n}.png" width=390 height=844>`)).join('');
writeFileSync('/tmp/sheet.html', html);
const p = await b.newPage({viewport:{width:394*3*names.length,height:844}});
await p.goto('file:///tmp/sheet.html'); await p.screenshot({path:out}); await b.close();

// Rules of the command line: every form that is taken, every fault with the way out.
import { describe, expect, it } from 'vitest';
import { PinbarError } from '../../../src/model/trouble.js';
import { parseTake } from '../../../src/ticket/parse-take.js';

function refusal(text: string): PinbarError {
  try {
    parseTake(text);
  } catch (error) {
    expect(error).toBeInstanceOf(PinbarError);
    return error as PinbarError;
  }
  throw new Error(`${text} was taken`);
}

describe('parseTake', () => {
  it.each([
    ['cutting=stroke:#e5007d', { pass: 'cutting', stroke: '#e5007d' }],
    ['creasing=layer:"Fold lines"', { pass: 'creasing', layer: 'Fold lines' }],
    ["creasing=layer:'Fold, lines'", { pass: 'creasing', layer: 'Fold, lines' }],
    ['creasing=layer:"Fold, \'inner\' lines",dashed', { pass: 'creasing', layer: "Fold, 'inner' lines", dashed: true }],
    ['print=rest', { pass: 'print', rest: true }],
    ['creasing=layer:Die,stroke:#00f,dashed', { pass: 'creasing', layer: 'Die', stroke: '#00f', dashed: true }],
    ['cutting=stroke:rgb(1, 2, 3),solid', { pass: 'cutting', stroke: 'rgb(1, 2, 3)', dashed: false }],
    ['cutting=width:0.25', { pass: 'cutting', widthMm: 0.25 }],
    ['cutting=width:.3mm', { pass: 'cutting', widthMm: 0.3 }],
    ['cutting=width:0.3 mm', { pass: 'cutting', widthMm: 0.3 }],
    ['cutting=stroke:#f00,tolerance:8', { pass: 'cutting', stroke: '#f00', colourTolerance: 8 }],
    ['cutting = class:die , id:outline* ', { pass: 'cutting', class: 'die', id: 'outline*' }],
    ['cutting=element:path,fill:none', { pass: 'cutting', element: 'path', fill: 'none' }],
    ['print=layer:Panel=front', { pass: 'print', layer: 'Panel=front' }],
    ["print=layer:Summer's end,fill:any", { pass: 'print', layer: "Summer's end", fill: 'any' }],
    ['print=layer:a:b', { pass: 'print', layer: 'a:b' }],
  ])('reads %s', (text, rule) => {
    expect(parseTake(text)).toEqual(rule);
  });

  it.each([
    ['cutting=strok:#e5007d', '"strok"', '"stroke"'],
    ['cutting=color:#e5007d', '"color"', 'layer, stroke'],
    ['cutting=', '""', 'Example'],
    ['cutting=layer:Die,', '""', 'Example'],
    ['=layer:Die', 'PASS=WHAT', 'partial-cutting'],
    ['cutting', 'PASS=WHAT', 'print=rest'],
    ['cutting=layer', 'no value', 'layer:VALUE'],
    ['cutting=layer:', 'no value', 'layer:VALUE'],
    ['cutting=layer:""', 'no value', 'layer:VALUE'],
    ['cutting=layer:"Die', 'never closed', 'Example'],
    ['cutting=width:thin', '0 to 1000 mm', 'width:0.25mm'],
    ['cutting=width:-1', '0 to 1000 mm', 'width:0.25mm'],
    ['cutting=width:0x10', '0 to 1000 mm', 'width:0.25mm'],
    ['cutting=width:1000.5', '0 to 1000 mm', 'width:0.25mm'],
    ['cutting=stroke:red,tolerance:256', '0 to 255', 'tolerance:8'],
    ['cutting=stroke:red,stroke:blue', 'stroke is said twice', 'one --take for each'],
    ['cutting=dashed,solid', 'dashed is said twice', 'one --take for each'],
    ['print=rest,layer:Art', 'rest stands alone', 'other conditions'],
    ['cutting=dashed:yes', 'dashed takes no value', 'dashed alone'],
    ['cutting=element:pth', 'element is "pth"', '"path"'],
    ['cutting=element:star', 'polyline', 'element:path'],
    ['cutting=constructor:1', '"constructor"', 'Example'],
  ])('refuses %s', (text, found, way) => {
    const error = refusal(text);
    expect(error.code).toBe('use/wrong');
    expect(error.message).toContain(`--take ${text}: `);
    expect(error.message).toContain(found);
    expect(error.findings.at(-1)!.remedy).toContain(way);
    expect(error.findings.at(-1)!.data).toEqual({ take: text });
  });
});

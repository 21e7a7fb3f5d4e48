// Reads a step aloud with a voice that lies on the device; a voice that would need a network is never used.

export function localVoice(): SpeechSynthesisVoice | null {
  if (!('speechSynthesis' in window)) return null;
  const voices = speechSynthesis.getVoices().filter((voice) => voice.localService);
  return voices.find((voice) => voice.lang.startsWith('en')) ?? null;
}

export function speak(text: string): boolean {
  const voice = localVoice();
  if (!voice) return false;
  speechSynthesis.cancel();
  const said = new SpeechSynthesisUtterance(text);
  said.voice = voice;
  said.lang = voice.lang;
  said.rate = 0.95;
  speechSynthesis.speak(said);
  return true;
}

export function hush() {
  if ('speechSynthesis' in window) speechSynthesis.cancel();
}

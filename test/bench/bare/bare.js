addEventListener('load', () => void navigator.serviceWorker.register('worker.js'));
